import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const noMadeDate = findingRule<"no-made-date">({
  code: "no-made-date",
  group: "Lives and supply",
  severity: "warning",
  summary: "An item has a life that cannot be counted, because nobody wrote when it began",
  why: "An item of unknown age has to be taken as old: on something that can hurt, it keeps hold points shut.",
  remedy:
    "Write made: in the part's block for the one that was on the vehicle, or made DATE behind fitted: for a new one. The date is on its label or moulded in.",
  bad: `part fuel.hoses "Fuel hoses"
  life: 5 year from made
`,
  good: `part fuel.hoses "Fuel hoses"
  life: 5 year from made
  made: 2025-02-01
`,
  message: ({ data: { what, counted, life } }) =>
    `when ${what} was ${counted} is unknown: expected a date to count its life of ${say(life)} from`,
});
