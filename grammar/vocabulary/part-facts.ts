/** Facts about parts: where they are, what was seen of them, what becomes of them. */
import { fact } from "./entry.ts";
import type { Clause, Element, RecordEntry, ReferenceKind, Shape } from "./shape.ts";
import {
  characteristic,
  choice,
  choices,
  clause,
  date,
  element,
  flag,
  optional,
  quantities,
  quantity,
  reference,
  references,
  required,
  string,
  TREE_KINDS,
} from "./shape.ts";
import { CONDITIONS, DECISIONS, METHODS } from "./words.ts";

const what = (...kinds: ReferenceKind[]): Element => element("what", references(...kinds));
const PARTS = what("part", "assembly");
const ANYTHING = what(...TREE_KINDS);

/** `by METHOD` beside `by "JR"`: what stands behind the word tells them apart. */
const byMethod: Clause = clause("by", "method", choice(...METHODS));

const optionallyCounted: Shape = {
  value: "countedReferences",
  to: ["part", "assembly"],
  count: "optional",
};

const WHERE_IT_IS: readonly RecordEntry[] = [
  fact("removed", [PARTS], {
    help: "Taken off. What comes off as a unit keeps the joints inside it; only those to the rest open.",
    example: "removed: front.left.{caliper, disc, hub}",
    bad: "remvoed: front.left.{caliper, disc, hub}",
    code: "unknown-record",
    clauses: [flag("asUnit", "as", "a", "unit")],
  }),
  fact("stripped", [PARTS], {
    help: "Opened up into its pieces.",
    example: "stripped: front.left.caliper",
    bad: "stripped: front.left.calliper",
    code: "unknown-reference",
  }),
  fact("fitted", [PARTS], {
    help: "Put on. For trial, it secures nothing. One that was received, bought or made starts a new item.",
    example: 'fitted: front.left.balljoint made 2026-02-10 batch "B 41"',
    bad: "fitted: front.left.balljoint made 10.2.2026",
    code: "bad-date",
    clauses: [
      flag("forTrial", "for", "trial"),
      clause("made", "made", date),
      clause("expires", "expires", date),
      clause("batch", "batch", string),
    ],
  }),
  fact("cleaned", [ANYTHING], {
    help: "Cleaned, and how.",
    example: "cleaned: front.left.caliper by solvent",
    bad: "cleaned: front.left.caliper by solvant",
    code: "unreadable-value",
    clauses: [byMethod],
  }),
  fact("inspected", [ANYTHING], {
    help: "Looked over, and how.",
    example: "inspected: front.left.hub by penetrant",
    bad: "inspected: front.left.hub with penetrant",
    code: "unreadable-value",
    clauses: [byMethod],
  }),
  fact("greased", [ANYTHING], {
    help: "Greased.",
    example: "greased: front.left.hub",
    bad: "greesed: front.left.hub",
    code: "unknown-record",
  }),
  fact("serviced", [ANYTHING], {
    help: "Serviced, and until when that holds.",
    example: "serviced: extinguisher until 2028-05-21",
    bad: "serviced: extinguisher until May 2028",
    code: "bad-date",
    clauses: [clause("until", "until", date)],
  }),
  fact(
    "changed",
    [element("what", reference(...TREE_KINDS)), element("definition", { value: "definition" })],
    {
      help: "From this day on a definition is different. The block says how it was at the start.",
      example: "changed: front.left.disc_bolts torque 23 N.m ± 10 %",
      bad: "changed: front.left.disc_bolts torqe 23 N.m ± 10 %",
      code: "unreadable-value",
      choice: "Any record of the tree can be changed, a `default` of an assembly too.",
    },
  ),
];

const WHAT_WAS_SEEN: readonly RecordEntry[] = [
  fact(
    "found",
    [element("what", references(...TREE_KINDS, "gauge")), element("conditions", choices(...CONDITIONS))],
    {
      help: "The condition it was found in.",
      example: 'found: front.left.balljoint play, perished "boot split"',
      bad: 'found: front.left.balljoint play perished "boot split"',
      code: "unreadable-value",
    },
  ),
  fact(
    "measured",
    [
      element("what", { value: "reference", to: [...TREE_KINDS], member: true }),
      optional("name", characteristic),
      element("readings", quantities("any")),
    ],
    {
      help: "One or more readings; the worst is judged, the spread shown. `REF.NAME` may be written too.",
      example: "measured: front.left.disc thickness 9.12, 9.10, 9.14 mm with mic25",
      bad: "measured: front.left.disc thickness 9,12 mm with mic25",
      code: "decimal-comma",
      clauses: [
        { words: ["±"], role: "uncertainty", shape: quantity("any") },
        clause("at", "at", string),
        clause("for", "setup", reference("setup")),
        clause("with", "gauge", reference("gauge")),
      ],
    },
  ),
  fact("tagged", [ANYTHING, element("tag", string)], {
    help: "Identity or orientation marks made before it came apart; shown when it goes back.",
    example: 'tagged: front.left.hub "L, dot towards the front"',
    bad: 'tagged: front.left.hub "L, dot towards the front',
    code: "unclosed-string",
  }),
  fact("identified", [element("what", reference("part"))], {
    help: "What an unknown part turned out to be.",
    example: 'identified: front.left.hub as "hub of the small saloon" from saloon_hub',
    bad: 'identified: front.left.hub "hub of the small saloon"',
    code: "missing-value",
    clauses: [required("as", "as", string), clause("from", "from", reference("donor"))],
  }),
];

const WHAT_BECOMES_OF_IT: readonly RecordEntry[] = [
  fact("decided", [element("what", optionallyCounted), element("decision", choice(...DECISIONS))], {
    help: "What becomes of it; without a number, of all of its `count`.",
    example: "decided: front.left.balljoint renew",
    bad: "decided: front.left.balljoint replace",
    code: "unreadable-value",
  }),
  fact("sent", [PARTS], {
    help: "Sent out for work; the cost is the quotation, one sum for the lot.",
    example: 'sent: front.left.hub to northgate for "crack test" due 2026-05-20 cost 45.00 GBP',
    bad: 'sent: front.left.hub for "crack test" due 2026-05-20 cost 45.00 GBP',
    code: "missing-value",
    clauses: [
      required("to", "to", reference("supplier")),
      clause("for", "for", string),
      clause("due", "due", date),
      clause("cost", "cost", { value: "money" }),
    ],
    choice: "What for may be left out.",
  }),
  fact("back", [PARTS], {
    help: "Back from outside work; the cost is the bill, one sum for the lot.",
    example: "back: front.left.hub cost 48.00 GBP",
    bad: "back: front.left.hub cost 48.00",
    code: "missing-value",
    clauses: [clause("cost", "cost", { value: "money" })],
  }),
  fact("made", [PARTS], {
    help: "Made in the own workshop, and in hand.",
    example: "made: bracket",
    bad: "made : bracket",
    code: "unknown-record",
  }),
  fact("reconditioned", [PARTS], {
    help: "Own reconditioning finished; it spends the kit.",
    example: "reconditioned: front.left.caliper",
    bad: "Reconditioned: front.left.caliper",
    code: "unknown-record",
  }),
  fact("repaired", [PARTS], {
    help: "Own repair finished.",
    example: "repaired: front.left.dust_cap",
    bad: "repaired:front.left.dust_cap",
    code: "unknown-record",
  }),
];

export const PART_FACTS: readonly RecordEntry[] = [...WHERE_IT_IS, ...WHAT_WAS_SEEN, ...WHAT_BECOMES_OF_IT];
