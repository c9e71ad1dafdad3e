/** The records of jobs and hold points. */
import { record } from "./entry.ts";
import type { RecordEntry } from "./shape.ts";
import {
  choices,
  date,
  element,
  newName,
  optional,
  reference,
  references,
  string,
  TREE_KINDS,
} from "./shape.ts";
import { HOLD_NEEDS } from "./words.ts";

const JOB: readonly RecordEntry[] = [
  record("job", "on", references(...TREE_KINDS), {
    help: "What the work is on.",
    example: "on: front.left",
    bad: "on: front left",
    code: "unreadable-value",
  }),
  record(
    "job",
    "takes",
    { value: "takes" },
    {
      help: "How long it takes: one figure, or optimistic, likely and pessimistic.",
      example: "takes: 4..6..10 h",
      bad: "takes: 4..10 h",
      code: "missing-value",
    },
  ),
  record("job", "by", reference("supplier"), {
    help: "Who does it, when it is outside work; its days are then calendar days.",
    example: "by: northgate",
    bad: 'by: "Northgate"',
    code: "unreadable-value",
  }),
  record(
    "job",
    "needs",
    { value: "countedReferences", to: ["part"], count: "optional" },
    {
      help: "The parts it uses up.",
      example: "needs: 1 x caliper_kit",
      bad: "needs: 1 caliper_kit",
      code: "unreadable-value",
      repeats: true,
    },
  ),
  record("job", "start", date, {
    help: "It does not start before this day.",
    example: "start: 2026-05-02",
    bad: "start: 02/05/2026",
    code: "bad-date",
  }),
];

const HOLD: readonly RecordEntry[] = [
  record("hold", "covers", references(...TREE_KINDS), {
    help: "What it looks at (default: the vehicle).",
    example: "covers: front, brakes",
    bad: "covers: front and brakes",
    code: "unreadable-value",
  }),
  record("hold", "needs", choices(...HOLD_NEEDS), {
    help: "What it asks for (default: everything).",
    example: "needs: parts, joints, systems, limits, tests, snags",
    bad: "needs: joints, bolts",
    code: "unreadable-value",
    repeats: true,
    choice:
      "A line that could not be read, and of which nobody knows what it was about, keeps every hold point shut, but takes back no release. A hold point that asks for jobs waits, in the plan too, for every job on what it covers but those behind it or behind a later one.",
  }),
  record("hold", "planned", date, {
    help: "The day it is planned for.",
    example: "planned: 2026-08-01",
    bad: "planned: 2026-08",
    code: "bad-date",
  }),
  record(
    "hold",
    "stops",
    { value: "stops" },
    {
      help: "What must not happen before it: jobs by name, or the running of something.",
      example: "stops: ran vehicle",
      bad: "stops: ran",
      code: "missing-value",
      repeats: true,
      choice:
        "Jobs and running may stand in one list, or on lines of their own. `ran REF` stops the running of REF, of everything above it, and of everything below it, unless a hold point that names something nearer decides about that.",
    },
  ),
  record("hold", "test", [element("name", newName), optional("how", string)], {
    help: "What must be seen at this hold point.",
    example: 'test: no_leaks "dry after two minutes at pressure"',
    bad: 'test: no leaks "dry after two minutes at pressure"',
    code: "unreadable-value",
    repeats: true,
  }),
];

export const PLAN_RECORDS: readonly RecordEntry[] = [...JOB, ...HOLD];
