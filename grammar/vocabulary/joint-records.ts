/** The records of fastened joints. */
import { record } from "./entry.ts";
import type { RecordEntry, Shape } from "./shape.ts";
import { choice, member, quantities, quantity, references } from "./shape.ts";
import { LOCKS } from "./words.ts";

const counted: Shape = { value: "countedReferences", to: ["part"], count: "optional" };

const HARDWARE: readonly RecordEntry[] = [
  record("joint", "joins", references("part", "assembly"), {
    help: "The parts it holds.",
    example: "joins: front.left.hub, front.left.disc",
    bad: "joins: front.left.hub front.left.disc",
    code: "unreadable-value",
  }),
  record(
    "joint",
    "bolt",
    { value: "bolt" },
    {
      help: "Its bolts: number, thread, length under the head, class.",
      example: "bolt: 4 x M8x1.25x30 class 8.8",
      bad: "bolt: 4 x M8x1.25x30 8.8",
      code: "unreadable-value",
      choice: "The number, the length and the class may be left out; an unmarked bolt is `class unknown`.",
    },
  ),
  record(
    "joint",
    "stud",
    { value: "bolt" },
    {
      help: "Its studs: number, thread, length, class.",
      example: "stud: 6 x 3/8-24 UNF x 2 in grade 5",
      bad: 'stud: 6 x 3/8" grade 5',
      code: "unreadable-value",
      choice:
        "The length of a stud is its whole length; its end in the hole is taken as one diameter, so that what stands past the nut is at most what is said.",
    },
  ),
  record("joint", "thread_length", quantity("length"), {
    help: "How long the thread of the bolt is, when known (else reckoned from its length).",
    example: "thread_length: 22 mm",
    bad: "thread_length: 22 mm long",
    code: "unreadable-value",
  }),
  record(
    "joint",
    "nut",
    { value: "nut" },
    {
      help: "Its nuts, or the tapped hole.",
      example: "nut: self_locking M8x1.25 class 8 height 8 mm",
      bad: "nut: M8x1.25",
      code: "unreadable-value",
      choice:
        "Behind the form the rest may stand in any order. The depth of a tapped hole is that of its full thread, and the hole is blind: of one that goes through, state what the bolt may use. A nut that states no height is taken as 0.8 d high (common practice, no source).",
    },
  ),
  record(
    "joint",
    "washers",
    { value: "countedQuantity" },
    {
      help: "Washers on each bolt, under head and nut together.",
      example: "washers: 2 x 1.6 mm",
      bad: "washers: two x 1.6 mm",
      code: "unreadable-value",
      choice: "Without a number there is one.",
    },
  ),
  record("joint", "grip", quantity("length"), {
    help: "The thickness that is clamped.",
    example: "grip: 14 mm",
    bad: "grip: 14 N.m",
    code: "wrong-dimension",
  }),
];

const TIGHTENING: readonly RecordEntry[] = [
  record(
    "joint",
    "torque",
    { value: "torque" },
    {
      help: "What it is tightened to; without a tolerance ± 10 %.",
      example: "torque: 24 N.m ± 10 %",
      bad: "torque: 24 nm",
      code: "wrong-dimension",
    },
  ),
  record("joint", "stages", quantities("torque"), {
    help: "Steps on the way to the torque.",
    example: "stages: 10 N.m, 18 N.m",
    bad: "stages: 10 N.m, then 18 N.m",
    code: "unreadable-value",
  }),
  record("joint", "set_by", member, {
    help: "It is set not by torque but by this measurement.",
    example: "set_by: front.left.hub.end_float",
    bad: "set_by: 0.13 mm",
    code: "unreadable-value",
  }),
  record(
    "joint",
    "friction",
    { value: "friction" },
    {
      help: "The friction that preload is reckoned with: a nut factor, figures for thread and head, or a word.",
      example: "friction: nut_factor 0.18",
      bad: "friction: 0.18",
      code: "friction-unnamed",
    },
  ),
  record(
    "joint",
    "recheck",
    { value: "recheck" },
    {
      help: "When to tighten or check it again, in hours, distance or runs.",
      example: "recheck: after 1 h running, then every 10 h running",
      bad: "recheck: 1 h running",
      code: "unreadable-value",
      choice: "Either half may stand alone; the word running may be left out.",
    },
  ),
  record("joint", "uses", counted, {
    help: "Single-use hardware spent whenever it is tightened after having been open or loosened.",
    example: "uses: 4 x disc_nut",
    bad: "uses: 4 disc_nut",
    code: "unreadable-value",
    repeats: true,
  }),
];

const SECURING: readonly RecordEntry[] = [
  record("joint", "lock", choice(...LOCKS), {
    help: "How it is locked.",
    example: "lock: self_locking",
    bad: "lock: selflocking",
    code: "unreadable-value",
  }),
  record("joint", "mark", choice("yes", "no"), {
    help: "Needs a witness mark.",
    example: "mark: yes",
    bad: "mark: yellow",
    code: "unreadable-value",
  }),
  record(["joint", "job", "hold"], "after", references("job", "hold"), {
    help: "What must come before: for a joint, before its final tightening.",
    example: "after: strip_front",
    bad: "after: strip-front",
    code: "unreadable-value",
  }),
];

export const JOINT_RECORDS: readonly RecordEntry[] = [...HARDWARE, ...TIGHTENING, ...SECURING];
