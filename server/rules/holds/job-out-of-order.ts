import { findingRule } from "../rule.ts";
import { list } from "../words.ts";

export const jobOutOfOrder = findingRule<"job-out-of-order">({
  code: "job-out-of-order",
  group: "Order of things",
  severity: "warning",
  summary: "A job is begun before one that it comes after is done",
  why: "Either the order in the plan is wrong, and with it the forecast, or work will have to be undone.",
  remedy: "Write done: for the one before, or correct the job's after:.",
  bad: `job strip "Strip"

job trim "Trim"
  after: strip

day 2026-05-02
  started: trim
`,
  good: `job strip "Strip"

job trim "Trim"
  after: strip

day 2026-05-02
  started: strip
  done: strip
  started: trim
`,
  message: ({ data: { job, before } }) => `${job} is begun, expected ${list(before)} done before it`,
});
