import type { Build } from "../../build/build.ts";
import type { Place } from "../../build/source.ts";
import { costsOf } from "../../plan/costs.ts";
import { orderOf } from "../../plan/order.ts";
import { planOf } from "../../plan/plan.ts";
import type { Notice } from "../rule.ts";
import { checkingRule } from "../rule.ts";

export const currencyWithoutRate = checkingRule({
  code: "currency-without-rate",
  group: "Lives and supply",
  severity: "error",
  summary: "Money is in a currency for which the vehicle states no rate",
  why: "Two currencies never add without a rate: totals and the budget leave this money out.",
  remedy: "Add a rate: to the vehicle, such as rate: 1 EUR = 0.86 GBP.",
  bad: `vehicle "Example"
  past: known
  currency: GBP

part core "Radiator core"

day 2026-05-02
  bought: 1 x core at 265.00 EUR
`,
  good: `vehicle "Example"
  past: known
  currency: GBP
  rate: 1 EUR = 0.86 GBP

part core "Radiator core"

day 2026-05-02
  bought: 1 x core at 265.00 EUR
`,
  check: missingRates,
});

function* missingRates(build: Build): Generator<Notice> {
  const { costs, withoutRate } = costsOf(build);
  const order = orderOf(build, planOf(build));
  const own = order.sum.own;
  const currencies = new Set([...withoutRate, ...(own?.kind === "no-rate" ? own.from : [])]);
  for (const currency of currencies) {
    const cost = costs.find(({ money }) => money.currency === currency);
    const line = order.lines.find(({ purchase }) => purchase.unitPrice?.currency === currency);
    const place: Place | undefined = cost?.place ?? line?.need.node.header;
    if (place !== undefined)
      yield {
        place,
        message: `no rate leads from ${currency} to the currency of the build: expected rate: 1 ${currency} = … in the vehicle`,
      };
  }
}
