import { findingRule } from "../rule.ts";

export const missingValue = findingRule<"missing-value">({
  code: "missing-value",
  group: "Notation",
  severity: "error",
  summary: "A record says less than it must",
  why: "Without that value the line means nothing, and what it was to say is lost.",
  remedy: "Write the value behind the word.",
  bad: `part hub "Hub"

day 2026-05-02
  removed:
`,
  good: `part hub "Hub"

day 2026-05-02
  removed: hub
`,
  message: ({ data }) => `a value is missing here: expected ${data.expected}`,
});
