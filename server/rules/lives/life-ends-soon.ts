import { findingRule } from "../rule.ts";

export const lifeEndsSoon = findingRule<"life-ends-soon">({
  code: "life-ends-soon",
  group: "Lives and supply",
  severity: "warning",
  summary: "The life of an item ends before a planned hold point that covers it",
  why: "The hold point cannot be released with it, and a new one may take weeks to come.",
  remedy: "Order a new one in time, or have it serviced and write its new date.",
  bad: `part safety.extinguisher "Extinguisher"
  price: 48.00 GBP
  expires: 2026-07-31

hold first_climb "First climb"
  needs: lives
  planned: 2026-08-15
`,
  good: `part safety.extinguisher "Extinguisher"
  price: 48.00 GBP
  expires: 2028-07-31

hold first_climb "First climb"
  needs: lives
  planned: 2026-08-15
`,
  message: ({ data: { what, ends, hold, title, planned } }) =>
    `the life of ${what} ends on ${ends}: expected it good for ${hold}${title === undefined ? "" : ` (${title})`} on ${planned}`,
});
