import { findingRule } from "../rule.ts";

export const duplicateName = findingRule<"duplicate-name">({
  code: "duplicate-name",
  group: "Notation",
  severity: "error",
  summary: "The same name or record stands twice",
  why: "Of two records the last counts, of two definitions the records of both: what the first one said may not hold.",
  remedy: "Keep one of the two, or give the second another name.",
  bad: `part hub "Hub"
  count: 2
  count: 3
`,
  good: `part hub "Hub"
  count: 3
`,
  message: ({ data }) => `${data.what} ${data.name} stands here a second time; expected it once`,
});
