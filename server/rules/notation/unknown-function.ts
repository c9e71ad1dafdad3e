import { findingRule } from "../rule.ts";

export const unknownFunction = findingRule<"unknown-function">({
  code: "unknown-function",
  group: "Notation",
  severity: "error",
  summary: "A function that the notation does not have",
  why: "The expression has no value, nor has anything that builds on it.",
  remedy: "Correct the name; the functions are listed in the reference.",
  bad: `day 2026-05-02
  calc: capacity = sweptvolume(81.5 mm, 77.6 mm, 4) in cc
`,
  good: `day 2026-05-02
  calc: capacity = swept_volume(81.5 mm, 77.6 mm, 4) in cc
`,
  message: ({ data }) => data.message,
});
