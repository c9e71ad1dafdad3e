import { findingRule } from "../rule.ts";

export const badDate = findingRule<"bad-date">({
  code: "bad-date",
  group: "Notation",
  severity: "error",
  summary: "A date that the calendar does not have, or in another form",
  why: "The facts of a day without a date cannot be put in order, so none of them counts.",
  remedy: "Write year, month and day, as in 2026-05-02.",
  source: "ISO 8601, calendar dates in the extended format",
  bad: `day 2.5.2026
`,
  good: `day 2026-05-02
`,
  message: ({ data }) => `${data.found} is no date here: expected ${data.expected}`,
});
