import { findingRule } from "../rule.ts";
import { foundInstead } from "./text-fault-words.ts";

export const unreadableExpression = findingRule<"unreadable-expression">({
  code: "unreadable-expression",
  group: "Notation",
  severity: "error",
  summary: "An expression that cannot be computed",
  why: "Nothing that is built on the name has a value.",
  remedy: "Correct the expression where the mark stands.",
  bad: `day 2026-05-02
  calc: gap = 54.02 mm -
`,
  good: `day 2026-05-02
  calc: gap = 54.02 mm - 54.00 mm
`,
  message: ({ data }) => foundInstead(data),
});
