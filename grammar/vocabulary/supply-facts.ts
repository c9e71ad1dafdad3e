/** Facts about goods: ordered, received, taken from the shelf. */
import { fact } from "./entry.ts";
import type { Clause, Element, RecordEntry } from "./shape.ts";
import { clause, date, element, money, optional, reference, required, string, TREE_KINDS } from "./shape.ts";

const ITEMS: Element = element("items", {
  value: "countedReferences",
  to: ["part", "assembly"],
  count: "required",
});
const PRICED_ITEMS: Element = element("items", {
  value: "countedReferences",
  to: ["part", "assembly"],
  count: "required",
  priced: true,
});

/** Behind other clauses, the price of each thing that has none of its own. */
const price: Clause = clause("at", "at", money);
const PRICE_CHOICE = "A price behind another clause is that of each thing which has none of its own.";

export const SUPPLY_FACTS: readonly RecordEntry[] = [
  fact("ordered", [PRICED_ITEMS], {
    help: "Ordered; money is the price of one.",
    example: 'ordered: 2 x front.left.balljoint at 31.50 GBP from northgate due 2026-05-12 ref "N-4410"',
    bad: 'ordered: front.left.balljoint at 31.50 GBP from northgate due 2026-05-12 ref "N-4410"',
    code: "unreadable-value",
    clauses: [
      clause("from", "from", reference("supplier")),
      clause("due", "due", date),
      clause("ref", "ref", string),
      price,
    ],
    choice: PRICE_CHOICE,
  }),
  fact("received", [optional("items", ITEMS.shape)], {
    help: "Received, item by item or a whole order.",
    example: 'received: order "N-4410"',
    bad: "received: order N-4410",
    code: "unreadable-value",
    clauses: [clause("order", "order", string)],
  }),
  fact("rejected", [ITEMS], {
    help: "Received but not fit for use: no longer in hand, and no order is open again.",
    example: 'rejected: 1 x front.left.balljoint "taper wrong"',
    bad: "rejected: 1 x front.left.balljoint taper wrong",
    code: "unreadable-value",
  }),
  fact("returned", [ITEMS], {
    help: "Sent back to where it was bought.",
    example: "returned: 1 x front.left.balljoint to northgate credit 31.50 GBP",
    bad: "returned: 1 x front.left.balljoint credit 31.50 GBP",
    code: "missing-value",
    clauses: [required("to", "to", reference("supplier")), clause("credit", "credit", money)],
  }),
  fact("bought", [PRICED_ITEMS], {
    help: "Bought over the counter: ordered and in hand at once; money is the price of one.",
    example: "bought: 10 x disc_nut from northgate at 0.85 GBP",
    bad: "bought: 10 disc_nut from northgate at 0.85 GBP",
    code: "unreadable-value",
    clauses: [clause("from", "from", reference("supplier")), price],
    choice: PRICE_CHOICE,
  }),
  fact("used", [ITEMS], {
    help: "Taken from the shelf.",
    example: "used: 1 x brake_fluid on brakes.front",
    bad: "used: 1 x brake_fluid for brakes.front",
    code: "unreadable-value",
    clauses: [clause("on", "on", reference(...TREE_KINDS))],
  }),
  fact("counted", [ITEMS], {
    help: "Counted on the shelf: sets what is in hand.",
    example: "counted: 12 x disc_nut",
    bad: "counted: -12 x disc_nut",
    code: "unreadable-value",
  }),
];
