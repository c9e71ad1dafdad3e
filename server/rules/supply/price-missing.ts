import type { Build } from "../../build/build.ts";
import { orderOf } from "../../plan/order.ts";
import { planOf } from "../../plan/plan.ts";
import type { Notice } from "../rule.ts";
import { checkingRule } from "../rule.ts";

export const priceMissing = checkingRule({
  code: "price-missing",
  group: "Lives and supply",
  severity: "hint",
  summary: "A part has to be ordered and has no price",
  why: "The totals of the order list and the costs are lower than they will be.",
  remedy: "Give the part a price:, or write at and the price where it is ordered.",
  bad: `part disc "Brake disc"

day 2026-05-02
  decided: disc renew
`,
  good: `part disc "Brake disc"
  price: 41.00 GBP

day 2026-05-02
  decided: disc renew
`,
  check: missingPrices,
});

function* missingPrices(build: Build): Generator<Notice> {
  for (const { need, purchase, why } of orderOf(build, planOf(build)).lines) {
    const place = need.node.header ?? why[0]?.place;
    if (purchase.total !== undefined || place === undefined) continue;
    yield {
      place,
      message: `${need.node.path} has to be ordered (${purchase.quantity}) and has no price: expected price: and an amount`,
    };
  }
}
