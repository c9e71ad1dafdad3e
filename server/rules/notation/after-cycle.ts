import { findingRule } from "../rule.ts";

export const afterCycle = findingRule<"after-cycle">({
  code: "after-cycle",
  group: "Notation",
  severity: "error",
  summary: "Jobs or hold points that wait for each other in a circle",
  why: "None of them can ever begin, so the plan has no place for them.",
  remedy: "Take one of the after: or stops: records out.",
  bad: `job strip "Strip"
  after: paint
  takes: 6 h

job paint "Paint"
  after: strip
  takes: 4 h
`,
  good: `job strip "Strip"
  takes: 6 h

job paint "Paint"
  after: strip
  takes: 4 h
`,
  message: ({ data }) => `${data.names.join(" comes after ")}: expected one of them to come first`,
});
