import { findingRule } from "../rule.ts";

export const outOfRangeArgument = findingRule<"out-of-range-argument">({
  code: "out-of-range-argument",
  group: "Notation",
  severity: "error",
  summary: "A function is given a value that it cannot take",
  why: "Outside its range the formula says nothing, or something dangerous.",
  remedy: "Correct the value; the range is in the message and in the function's help.",
  bad: `day 2026-05-02
  calc: freezes_at = freeze_point(90 %)
`,
  good: `day 2026-05-02
  calc: freezes_at = freeze_point(50 %)
`,
  message: ({ data }) => data.message,
});
