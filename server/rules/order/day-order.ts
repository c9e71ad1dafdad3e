import { findingRule } from "../rule.ts";

export const dayOrder = findingRule<"day-order">({
  code: "day-order",
  group: "Order of things",
  severity: "warning",
  summary: "A day stands below a later one in its file",
  why: "Facts count in the order of their dates, not of the lines, so the story reads otherwise than it is reckoned; most often a date is mistyped.",
  remedy: "Correct the date, or move the day to its place.",
  bad: `day 2026-05-09

day 2026-05-02
`,
  good: `day 2026-05-02

day 2026-05-09
`,
  message: ({ data }) => `${data.date} stands below ${data.before}: expected the days of a file in order`,
});
