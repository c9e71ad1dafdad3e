/** The facts of a day block: what can have happened, and how it is told. */
import type { Clause, Element, RecordEntry, ReferenceKind, Shape } from "./shape.ts";
import {
  characteristic,
  choice,
  choices,
  clause,
  date,
  element,
  flag,
  money,
  newName,
  optional,
  quantities,
  quantity,
  reference,
  references,
  required,
  string,
  TREE_KINDS,
} from "./shape.ts";
import { CONDITIONS, DECISIONS, LOCKS, METHODS } from "./words.ts";

/** Who did it: every fact may say so. */
export const BY: Clause = clause("by", "by", string);

/** `by METHOD` beside `by "JR"`: what stands behind the word tells them apart. */
const byMethod: Clause = clause("by", "method", choice(...METHODS));

interface Extra {
  readonly clauses?: readonly Clause[];
  readonly choice?: string;
}

function fact(
  word: string,
  elements: readonly Element[],
  help: string,
  example: string,
  extra: Extra = {},
): RecordEntry {
  const clauses = extra.clauses ?? [];
  return {
    word,
    blocks: ["day"],
    elements,
    clauses: [...clauses, BY],
    note: true,
    repeats: true,
    help,
    example,
    ...(extra.choice === undefined ? {} : { choice: extra.choice }),
  };
}

const counted = (count: "required" | "optional", priced?: true): Shape => ({
  value: "countedReferences",
  to: ["part", "assembly"],
  count,
  ...(priced === undefined ? {} : { priced }),
});

const what = (...kinds: ReferenceKind[]): Element => element("what", references(...kinds));
const PARTS = what("part", "assembly");
const ANYTHING = what(...TREE_KINDS);
const JOINTS = what("joint", "assembly");
const SYSTEMS = what("system", "assembly");
const JOBS = what("job");
const gauge = clause("with", "gauge", reference("gauge"));
const setup = clause("for", "setup", reference("setup"));

const WHERE_IT_IS: readonly RecordEntry[] = [
  fact(
    "removed",
    [PARTS],
    "Taken off. What comes off as a unit keeps the joints inside it.",
    "removed: front.left.{hub, disc}",
    {
      clauses: [flag("asUnit", "as", "a", "unit")],
    },
  ),
  fact("stripped", [PARTS], "Opened up into its pieces.", "stripped: front.left.caliper"),
  fact("fitted", [PARTS], "Put on; for trial, it secures nothing.", "fitted: front.left.disc for trial", {
    clauses: [
      flag("forTrial", "for", "trial"),
      clause("made", "made", date),
      clause("expires", "expires", date),
      clause("batch", "batch", string),
    ],
  }),
  fact("cleaned", [ANYTHING], "Cleaned, and how.", "cleaned: front.left.caliper by solvent", {
    clauses: [byMethod],
  }),
  fact("inspected", [ANYTHING], "Looked over, and how.", "inspected: front.left.hub by penetrant", {
    clauses: [byMethod],
  }),
  fact("greased", [ANYTHING], "Greased.", "greased: front.left.hub"),
  fact(
    "serviced",
    [ANYTHING],
    "Serviced, and until when that holds.",
    "serviced: extinguisher until 2027-03-01",
    {
      clauses: [clause("until", "until", date)],
    },
  ),
  fact(
    "changed",
    [element("what", reference(...TREE_KINDS)), element("definition", { value: "definition" })],
    "From this day on a definition is different.",
    "changed: front.left.disc_bolts torque 26 N.m",
  ),
];

const WHAT_WAS_SEEN: readonly RecordEntry[] = [
  fact(
    "found",
    [element("what", references(...TREE_KINDS, "gauge")), element("conditions", choices(...CONDITIONS))],
    "The condition it was found in.",
    'found: front.left.balljoint play, perished "boot split"',
  ),
  fact(
    "measured",
    [
      element("what", { value: "reference", to: [...TREE_KINDS], member: true }),
      optional("name", characteristic),
      element("readings", quantities("any")),
    ],
    "One or more readings; the worst is judged, the spread shown.",
    "measured: front.left.disc thickness 9.12, 9.10, 9.14 mm with mic25",
    {
      clauses: [
        { words: ["±"], role: "uncertainty", shape: quantity("any") },
        clause("at", "at", string),
        setup,
        gauge,
      ],
    },
  ),
  fact(
    "decided",
    [element("what", counted("optional")), element("decision", choice(...DECISIONS))],
    "What becomes of it.",
    "decided: front.left.balljoint renew",
  ),
  fact(
    "tagged",
    [ANYTHING, element("tag", string)],
    "Identity or orientation marks made before it came apart.",
    'tagged: front.left.hub "L, dot towards the front"',
  ),
  fact(
    "identified",
    [element("what", reference("part"))],
    "What an unknown part turned out to be.",
    'identified: front.left.hub as "hub of the small saloon" from saloon_hub',
    {
      clauses: [required("as", "as", string), clause("from", "from", reference("donor"))],
    },
  ),
];

const OUTSIDE_AND_SUPPLY: readonly RecordEntry[] = [
  fact(
    "sent",
    [PARTS],
    "Sent out for work; the cost is the quotation.",
    'sent: front.left.hub to northgate for "crack test" due 2026-05-20 cost 45.00 GBP',
    {
      clauses: [
        required("to", "to", reference("supplier")),
        clause("for", "for", string),
        clause("due", "due", date),
        clause("cost", "cost", money),
      ],
    },
  ),
  fact(
    "back",
    [PARTS],
    "Back from outside work; the cost is the bill.",
    "back: front.left.hub cost 48.00 GBP",
    { clauses: [clause("cost", "cost", money)] },
  ),
  fact(
    "ordered",
    [element("items", counted("required", true))],
    "Ordered; money is the price of one.",
    'ordered: 2 x front.left.balljoint at 31.50 GBP from northgate due 2026-05-12 ref "N-4410"',
    {
      clauses: [
        clause("from", "from", reference("supplier")),
        clause("due", "due", date),
        clause("ref", "ref", string),
      ],
    },
  ),
  fact(
    "received",
    [optional("items", counted("required"))],
    "Received, item by item or a whole order.",
    'received: order "N-4410"',
    { clauses: [clause("order", "order", string)] },
  ),
  fact(
    "rejected",
    [element("items", counted("required"))],
    "Received but not fit for use.",
    'rejected: 1 x front.left.balljoint "taper wrong"',
  ),
  fact(
    "returned",
    [element("items", counted("required"))],
    "Sent back to where it was bought.",
    "returned: 1 x front.left.balljoint to northgate credit 31.50 GBP",
    {
      clauses: [required("to", "to", reference("supplier")), clause("credit", "credit", money)],
    },
  ),
  fact(
    "bought",
    [element("items", counted("required", true))],
    "Bought over the counter: ordered and in hand at once.",
    "bought: 4 x disc_nut from northgate at 0.85 GBP",
    {
      clauses: [clause("from", "from", reference("supplier"))],
    },
  ),
  fact("made", [PARTS], "Made in the own workshop, and in hand.", "made: bracket"),
  fact(
    "reconditioned",
    [PARTS],
    "Own reconditioning finished; it spends the kit.",
    "reconditioned: front.left.caliper",
  ),
  fact("repaired", [PARTS], "Own repair finished.", "repaired: front.left.hub"),
  fact(
    "used",
    [element("items", counted("required"))],
    "Taken from the shelf.",
    "used: 2 x disc_nut on front.left.disc",
    { clauses: [clause("on", "on", reference(...TREE_KINDS))] },
  ),
  fact(
    "counted",
    [element("items", counted("required"))],
    "Counted on the shelf: sets what is in hand.",
    "counted: 8 x disc_nut",
  ),
];

const JOINT_WORK: readonly RecordEntry[] = [
  fact("nipped", [JOINTS], "Run up and just pinched, not torqued.", "nipped: front.left.disc_bolts"),
  fact(
    "torqued",
    [JOINTS, element("torque", quantity("torque"))],
    "Finally tightened to a torque.",
    "torqued: front.left.disc_bolts 24 N.m with wrench60",
    {
      clauses: [clause("then", "then", quantity("any")), flag("newHardware", "on", "new", "hardware"), gauge],
    },
  ),
  fact(
    "tightened",
    [JOINTS],
    "Tightened by feel, where the torque is `by hand`.",
    "tightened: front.left.disc_bolts",
  ),
  fact(
    "rechecked",
    [JOINTS, optional("torque", quantity("torque"))],
    "Checked again; `moved` voids lock and mark.",
    "rechecked: front.left.disc_bolts 24 N.m held",
    {
      clauses: [flag("held", "held"), flag("moved", "moved"), gauge],
    },
  ),
  fact("locked", [JOINTS], "Locked, and with what.", "locked: front.left.disc_bolts with threadlocker", {
    clauses: [clause("with", "lock", choice(...LOCKS))],
  }),
  fact("marked", [JOINTS], "Given its witness mark.", "marked: front.left.disc_bolts"),
  fact("loosened", [JOINTS], "Loosened.", "loosened: front.left.disc_bolts"),
];

const FLUIDS_AND_PROOF: readonly RecordEntry[] = [
  fact("opened", [SYSTEMS], "A fluid system was opened.", "opened: brakes.front"),
  fact("drained", [SYSTEMS], "Drained.", "drained: brakes.front"),
  fact(
    "filled",
    [SYSTEMS, optional("volume", quantity("volume"))],
    "Filled, with how much of what.",
    'filled: brakes.front 0.5 l with "DOT 4"',
    {
      clauses: [clause("with", "fluid", string)],
      choice: "The volume may be left out.",
    },
  ),
  fact("bled", [SYSTEMS], "Bled.", "bled: brakes.front"),
  fact("proved", [SYSTEMS], "Held pressure without a leak.", "proved: brakes.front at 70 bar for 2 min", {
    clauses: [clause("at", "pressure", quantity("pressure")), clause("for", "time", quantity("time"))],
  }),
  fact(
    "set",
    [
      element("what", { value: "reference", to: [...TREE_KINDS], member: true }),
      optional("name", characteristic),
      element("value", quantity("any")),
    ],
    "A setting as adjusted.",
    "set: front.left camber -1 deg 30 arcmin for driver_up",
    { clauses: [setup, gauge] },
  ),
  fact(
    "tested",
    [
      element("what", references(...TREE_KINDS, "hold")),
      optional("name", newName),
      element("result", choice("pass", "fail")),
    ],
    "A test of it, or the thing as a whole.",
    "tested: front.left.hub free_turning pass",
  ),
  fact("seen", [ANYTHING], "Seen by a second pair of eyes.", 'seen: front.left.disc_bolts by "KT"'),
  fact(
    "ran",
    [element("what", reference(...TREE_KINDS)), element("running", { value: "sequence", of: "any" })],
    "Running time: counts up lives and rechecks below it.",
    "ran: vehicle 0.2 h 4 km 5 run",
  ),
];

const WORK_AND_MONEY: readonly RecordEntry[] = [
  fact("started", [JOBS], "A job was begun.", "started: strip_front"),
  fact("worked", [element("hours", quantity("time"))], "Time spent on a job.", "worked: 3 h on strip_front", {
    clauses: [required("on", "on", reference("job"))],
  }),
  fact("done", [JOBS], "A job is finished.", "done: strip_front"),
  fact("spent", [element("amount", money)], "Money spent.", "spent: 12.40 GBP on front.left", {
    clauses: [clause("on", "on", reference(...TREE_KINDS))],
  }),
  fact(
    "calibrated",
    [element("what", references("gauge"))],
    "A gauge was calibrated.",
    "calibrated: wrench60 for 12 month by northgate",
    {
      clauses: [clause("for", "for", quantity("time")), clause("by", "supplier", reference("supplier"))],
    },
  ),
  fact(
    "snag",
    [element("name", newName)],
    "A defect to put right before the hold points that cover it.",
    'snag: stiff_pedal on brakes "rubs at the pushrod"',
    {
      clauses: [required("on", "on", reference(...TREE_KINDS))],
    },
  ),
  fact("cleared", [element("name", reference("snag"))], "A defect was put right.", "cleared: stiff_pedal"),
  fact(
    "conceded",
    [element("name", reference("snag"))],
    "A defect carried past the hold points before one that is named.",
    'conceded: stiff_pedal until first_run by "KT" "pedal box is replaced in the winter"',
    {
      clauses: [required("until", "until", reference("hold"))],
    },
  ),
  fact(
    "photo",
    [element("path", string)],
    "A picture; the string behind it is the caption.",
    'photo: "photos/disc.png" of front.left.disc "lip on the outer edge"',
    {
      clauses: [clause("of", "of", references(...TREE_KINDS))],
    },
  ),
  fact(
    "released",
    [element("what", references("hold"))],
    "A hold point was verified and released.",
    "released: first_run",
  ),
];

export const FACTS: readonly RecordEntry[] = [
  ...WHERE_IT_IS,
  ...WHAT_WAS_SEEN,
  ...OUTSIDE_AND_SUPPLY,
  ...JOINT_WORK,
  ...FLUIDS_AND_PROOF,
  ...WORK_AND_MONEY,
];
