import type { Rule } from "../rule.ts";
import { belowKeep } from "./below-keep.ts";
import { currencyWithoutRate } from "./currency-without-rate.ts";
import { deliveryOverdue } from "./delivery-overdue.ts";
import { identityContradicted } from "./identity-contradicted.ts";
import { missingUndecided } from "./missing-undecided.ts";
import { orderLate } from "./order-late.ts";
import { overBudget } from "./over-budget.ts";
import { priceMissing } from "./price-missing.ts";

export const supplyRules: readonly Rule[] = [
  orderLate,
  deliveryOverdue,
  priceMissing,
  belowKeep,
  missingUndecided,
  identityContradicted,
  currencyWithoutRate,
  overBudget,
];
