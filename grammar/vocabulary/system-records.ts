/** The records of fluid systems and electrical circuits. */
import { record } from "./entry.ts";
import type { RecordEntry } from "./shape.ts";
import { choice, clause, either, element, limits, quantity, references, required, string } from "./shape.ts";

const SYSTEM: readonly RecordEntry[] = [
  record("system", "fluid", string, {
    help: "The fluid it takes.",
    example: 'fluid: "DOT 4"',
    bad: "fluid: DOT 4",
    code: "unreadable-value",
  }),
  record("system", "capacity", quantity("volume"), {
    help: "How much it holds.",
    example: "capacity: 0.6 l",
    bad: "capacity: 0,6 l",
    code: "decimal-comma",
  }),
  record("system", "parts", references("part", "assembly"), {
    help: "The parts that hold the fluid.",
    example: "parts: front.left.caliper, front.right.caliper",
    bad: "parts: front.left.caliper, front.right.caliper,",
    code: "unreadable-value",
  }),
  record("system", "bleed", choice("yes", "no"), {
    help: "It must be bled.",
    example: "bleed: yes",
    bad: "bleed: twice",
    code: "unreadable-value",
  }),
  record("system", "pressure_test", [element("pressure", quantity("pressure"))], {
    help: "Leak test at working pressure, with liquid, never air.",
    example: "pressure_test: 70 bar for 2 min",
    bad: "pressure_test: 70 bar for",
    code: "missing-value",
    clauses: [clause("for", "for", quantity("time"))],
    choice: "The time may be left out.",
  }),
  record("system", "change", [], {
    help: "How often the fluid is changed.",
    example: "change: every 24 month",
    bad: "change: every two years",
    code: "unreadable-value",
    clauses: [required("every", "every", quantity("time"))],
  }),
];

const end = either(string, references("part", "assembly", "circuit", "joint", "system"));

const CIRCUIT: readonly RecordEntry[] = [
  record("circuit", "supply", quantity("voltage"), {
    help: "The voltage that feeds it.",
    example: "supply: 12 V",
    bad: "supply: battery",
    code: "unreadable-value",
  }),
  record("circuit", "load", quantity("current or power"), {
    help: "What it draws; several add up.",
    example: "load: 11 A",
    bad: "load: 11 V",
    code: "wrong-dimension",
    repeats: true,
  }),
  record("circuit", "wire", either({ value: "wireGauge" }, quantity("area")), {
    help: "The cross-section of the wire, or its gauge.",
    example: "wire: 2.5 mm2",
    bad: "wire: 2,5 mm2",
    code: "decimal-comma",
  }),
  record("circuit", "length", quantity("length"), {
    help: "The length of the wire one way; it is doubled for the way back.",
    example: "length: 3.2 m",
    bad: "length: 3.2 m each way",
    code: "unreadable-value",
  }),
  record("circuit", "return", choice("frame", "wire"), {
    help: "`frame`: the current comes back through the frame, and the length is not doubled.",
    example: "return: wire",
    bad: "return: chassis",
    code: "unreadable-value",
  }),
  record("circuit", "fuse", quantity("any"), {
    help: "Its fuse.",
    example: "fuse: 15 A",
    bad: "fuse: blade",
    code: "unreadable-value",
  }),
  record("circuit", "drop", limits, {
    help: "The voltage that may be lost, in % or in V.",
    example: "drop: max 5 %",
    bad: "drop: 5 %",
    code: "unreadable-value",
  }),
  record("circuit", "from", end, {
    help: "Where it starts, for the loom list.",
    example: 'from: "fuse box, 4"',
    bad: 'from: "fuse box, 4',
    code: "unclosed-string",
  }),
  record("circuit", "to", end, {
    help: "Where it ends, for the loom list.",
    example: "to: cooling.fan",
    bad: "to: cooling.fan.",
    code: "unreadable-value",
  }),
  record("circuit", "colour", string, {
    help: "The colour of the wire.",
    example: 'colour: "green, black tracer"',
    bad: "colour: green, black tracer",
    code: "unreadable-value",
  }),
  record("circuit", "relay", end, {
    help: "Its relay.",
    example: 'relay: "R2, left bulkhead"',
    bad: "relay: 2",
    code: "unreadable-value",
  }),
  record("circuit", "switch", end, {
    help: "Its switch.",
    example: 'switch: "header tank sender"',
    bad: 'switch: "header tank sender',
    code: "unclosed-string",
  }),
  record("circuit", "earth", end, {
    help: "Where it is earthed.",
    example: 'earth: "stud behind the left lamp"',
    bad: "earth:",
    code: "missing-value",
  }),
];

export const SYSTEM_RECORDS: readonly RecordEntry[] = [...SYSTEM, ...CIRCUIT];
