import { findingRule } from "../rule.ts";

export const waiverWithoutReason = findingRule<"waiver-without-reason">({
  code: "waiver-without-reason",
  group: "Notation",
  severity: "warning",
  summary: "A complaint is waived without saying why",
  why: "Whoever reads the log next year has no way to tell a decision from an oversight.",
  remedy: "Write the reason behind a colon.",
  bad: `part hub "Hub"

day 2026-05-02
  measured: hub bore 54.02 mm  # waived measured-without-limit
`,
  good: `part hub "Hub"

day 2026-05-02
  measured: hub bore 54.02 mm  # waived measured-without-limit: for the record only
`,
  message: ({ data }) => `${data.found} gives no reason: expected ${data.expected}`,
});
