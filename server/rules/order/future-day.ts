import { findingRule } from "../rule.ts";

export const futureDay = findingRule<"future-day">({
  code: "future-day",
  group: "Order of things",
  severity: "warning",
  summary: "A day that has not come yet",
  why: "What a future day says does not count, so the parts it fits are still off and the joints it closes still open.",
  remedy: "Correct the date, or move what is planned into a job.",
  bad: `vehicle "Example"
  today: 2026-05-02

day 2026-05-20
`,
  good: `vehicle "Example"
  today: 2026-05-20

day 2026-05-02
`,
  message: ({ data }) => `${data.date} is after today, ${data.today}: what it says does not count yet`,
});
