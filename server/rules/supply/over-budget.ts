import type { Build } from "../../build/build.ts";
import { placeAt } from "../../build/source.ts";
import { costsOf } from "../../plan/costs.ts";
import { formatMoney, subtractMoney } from "../../quantities/money.ts";
import type { Notice } from "../rule.ts";
import { checkingRule } from "../rule.ts";

export const overBudget = checkingRule({
  code: "over-budget",
  group: "Lives and supply",
  severity: "warning",
  summary: "The build has cost more than its budget",
  why: "What is still to be bought comes on top.",
  remedy: "Raise the budget: knowingly, or decide what can wait. cotter costs shows where the money went.",
  bad: `vehicle "Example"
  past: known
  currency: GBP
  budget: 100.00 GBP

day 2026-05-02
  spent: 124.50 GBP "frame jig, a day"
`,
  good: `vehicle "Example"
  past: known
  currency: GBP
  budget: 500.00 GBP

day 2026-05-02
  spent: 124.50 GBP "frame jig, a day"
`,
  check: spentTooMuch,
});

function* spentTooMuch(build: Build): Generator<Notice> {
  const { total, budget } = costsOf(build);
  const { definitions, gathered } = build.standing;
  const record = definitions.one(gathered.tree.root, "budget");
  if (total === undefined || budget === undefined || record === undefined) return;
  const over = subtractMoney(total, budget);
  if ("fault" in over || !over.amount.greaterThan(0)) return;
  const message = `${formatMoney(total)} is spent or ordered: expected at most the budget of ${formatMoney(budget)}, ${formatMoney(over)} less`;
  yield { place: placeAt(record.site, record.record.at), message };
}
