import { findingRule } from "../rule.ts";

export const doneBeforeStarted = findingRule<"done-before-started">({
  code: "done-before-started",
  group: "Order of things",
  severity: "information",
  summary: "A job is finished that was never begun",
  why: "Without a beginning the time it took is unknown, and the plan learns nothing from it.",
  remedy: "Write started: or worked: for the job.",
  bad: `job strip "Strip"
  takes: 6 h

day 2026-05-02
  done: strip
`,
  good: `job strip "Strip"
  takes: 6 h

day 2026-05-02
  worked: 5 h on strip
  done: strip
`,
  message: ({ data }) =>
    `${data.job} is done but was never started or worked on: expected started: or worked: before`,
});
