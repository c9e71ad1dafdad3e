import { findingRule } from "../rule.ts";

export const fittedTwice = findingRule<"fitted-twice">({
  code: "fitted-twice",
  group: "Order of things",
  severity: "warning",
  summary: "A part is fitted that is on already",
  why: "Either it came off again and nobody wrote it down, or another part is meant.",
  remedy: "Write down when it came off, or name the part that was fitted.",
  bad: `part hub "Hub"

day 2026-05-02
  fitted: hub
`,
  good: `part hub "Hub"

day 2026-05-02
  removed: hub
  fitted: hub
`,
  message: ({ data }) => `${data.what} is on already: expected a part that is off`,
});
