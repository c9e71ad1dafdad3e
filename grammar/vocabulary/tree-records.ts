/** The records of the tree of the vehicle, and of its parts. */
import type { BlockWord } from "../syntax.ts";
import { record } from "./entry.ts";
import type { RecordEntry } from "./shape.ts";
import {
  characteristic,
  choice,
  date,
  element,
  limits,
  member,
  money,
  newName,
  number,
  optional,
  quantity,
  reference,
  required,
  string,
  TREE_KINDS,
} from "./shape.ts";
import { AS_FOUND, MATERIALS } from "./words.ts";

const TREE: readonly BlockWord[] = TREE_KINDS;

const ANY_BLOCK_OF_THE_TREE: readonly RecordEntry[] = [
  record(
    "assembly",
    "default",
    { value: "definition" },
    {
      help: "What holds for everything below that says nothing itself.",
      example: "default: friction oiled",
      bad: "default: oiled",
      code: "unreadable-value",
      repeats: true,
      choice: "Any record of the tree but `default` itself; one line for each word.",
    },
  ),
  record(TREE, "limit", [element("name", characteristic), element("limits", limits)], {
    help: "What a measurement, or a `calc:` of that name in the same branch, must satisfy.",
    example: "limit: thickness min 8.4 mm new 9.5 mm",
    bad: "limit: thickness 8.4 mm",
    code: "unreadable-value",
    repeats: true,
    choice: "A figure alone is refused: it does not say on which side the bad lies.",
  }),
  record(
    TREE,
    "setting",
    [element("name", characteristic), element("limits", { value: "limits", nominal: true })],
    {
      help: "Something that is adjusted, with its tolerance: camber, toe, balance, ride height.",
      example: "setting: camber -1.5 deg ± 15 arcmin",
      bad: "setting: camber -1,5 deg ± 15 arcmin",
      code: "decimal-comma",
      repeats: true,
      choice: "A setting may come without a tolerance: then the value is only kept beside what is set.",
    },
  ),
  record(TREE, "test", [element("name", newName), optional("how", string)], {
    help: "Something to be tried before a hold point.",
    example: 'test: free_turning "spins two turns by hand"',
    bad: 'test: "spins two turns by hand"',
    code: "unreadable-value",
    repeats: true,
    choice: "How it is tried may be left out.",
  }),
  record(TREE, "safety", choice("critical"), {
    help: "Its failure can hurt: brakes, steering, wheels, harness, fuel.",
    example: "safety: critical",
    bad: "safety: high",
    code: "unreadable-value",
    choice: "May be said of any block of the tree; it holds for everything below an assembly.",
  }),
  record(TREE, "second_check", choice("yes", "no"), {
    help: "A second pair of eyes is asked for.",
    example: "second_check: yes",
    bad: "second_check: please",
    code: "unreadable-value",
  }),
  record(["part", "assembly"], "fit", [element("name", characteristic)], {
    help: "A clearance or interference between two things that are measured or sized.",
    example: "fit: spigot in front.left.hub.bore clearance 0.01..0.06 mm",
    bad: "fit: spigot in front.left.hub.bore 0.01..0.06 mm",
    code: "unreadable-value",
    repeats: true,
    clauses: [
      required("in", "in", member),
      { ...required("clearance", "clearance", limits), insteadOf: "sense" },
      { ...required("interference", "interference", limits), insteadOf: "sense" },
    ],
  }),
  record(["part", "assembly"], "pair", [element("name", characteristic)], {
    help: "Side to side: two measurements must agree.",
    example: "pair: thickness with front.right.disc.thickness within 2 %",
    bad: "pair: thickness with front.right.disc.thickness",
    code: "missing-value",
    repeats: true,
    clauses: [required("with", "with", member), required("within", "within", quantity("any"))],
  }),
];

const IDENTITY: readonly RecordEntry[] = [
  record("part", "count", number, {
    help: "How many of it are on the vehicle (default 1).",
    example: "count: 2",
    bad: "count: 2 x",
    code: "unreadable-value",
  }),
  record("part", "maker", string, {
    help: "Who made it.",
    example: 'maker: "Halvorsen"',
    bad: "maker: Halvorsen",
    code: "unreadable-value",
  }),
  record("part", "donor", string, {
    help: "What it was made for, when it came off something else.",
    example: 'donor: "small saloon, front hub"',
    bad: "donor: small saloon, front hub",
    code: "unreadable-value",
  }),
  record("part", "material", choice(...MATERIALS), {
    help: "What it is made of.",
    example: "material: steel",
    bad: "material: aluminum",
    code: "unreadable-value",
  }),
];

const PURCHASE: readonly RecordEntry[] = [
  record("part", "price", money, {
    help: "What one costs, without tax.",
    example: "price: 31.50 GBP",
    bad: "price: 31.50",
    code: "missing-value",
  }),
  record("part", "supplier", reference("supplier"), {
    help: "Where it is bought.",
    example: "supplier: northgate",
    bad: "supplier: norhtgate",
    code: "unknown-reference",
  }),
  record(
    "part",
    "pack",
    { value: "pack" },
    {
      help: "How many come in a pack, and what one of a pack costs.",
      example: "pack: 50 at 0.60 GBP",
      bad: "pack: 50 for 0.60 GBP",
      code: "unreadable-value",
      choice: "The money behind `at` is the price of one, as everywhere.",
    },
  ),
  record("part", "stock", number, {
    help: "How many are on the shelf at the start.",
    example: "stock: 8",
    bad: "stock: some",
    code: "unreadable-value",
  }),
  record("part", "keep", number, {
    help: "How many should be on the shelf always.",
    example: "keep: 4",
    bad: "keep: 4 x",
    code: "unreadable-value",
  }),
  record("part", "kit", reference("part"), {
    help: "The reconditioning kit for it.",
    example: "kit: caliper_kit",
    bad: "kit: caliper-kit",
    code: "unreadable-value",
  }),
];

const LIFE: readonly RecordEntry[] = [
  record("part", "single_use", choice("yes", "no"), {
    help: "Never refitted: a new one whenever it has been off.",
    example: "single_use: yes",
    bad: "single_use: always",
    code: "unreadable-value",
  }),
  record(
    "part",
    "life",
    { value: "life" },
    {
      help: "How long it may serve, from the day it was made or fitted, or in running.",
      example: "life: 10 year from made",
      bad: "life: 10 year",
      code: "missing-value",
      repeats: true,
    },
  ),
  record("part", "expires", date, {
    help: "The day its life ends.",
    example: "expires: 2034-06-30",
    bad: "expires: 2034-06-31",
    code: "bad-date",
  }),
  record("part", "service", [], {
    help: "How often it is serviced.",
    example: "service: every 24 month",
    bad: "service: 24 month",
    code: "unreadable-value",
    clauses: [required("every", "every", quantity("time"))],
  }),
  record("part", "made", date, {
    help: "When the one on the vehicle at the start was made.",
    example: "made: 2024-06-01",
    bad: "made: June 2024",
    code: "bad-date",
  }),
  record("part", "as_found", choice(...AS_FOUND), {
    help: "Where it was at the start of the log (default `on`; `shelf` for goods that are not on the vehicle).",
    example: "as_found: shelf",
    bad: "as_found: gone",
    code: "unreadable-value",
  }),
];

export const TREE_RECORDS: readonly RecordEntry[] = [
  ...ANY_BLOCK_OF_THE_TREE,
  ...IDENTITY,
  ...PURCHASE,
  ...LIFE,
];
