import { findingRule } from "../rule.ts";

export const backNeverSent = findingRule<"back-never-sent">({
  code: "back-never-sent",
  group: "Order of things",
  severity: "warning",
  summary: "A part comes back that was never sent away",
  why: "Either the sending was not written down, with its quotation and date, or another part is meant.",
  remedy: "Write sent: for the day it went, or name the part that came back.",
  bad: `part crank "Crankshaft"

day 2026-05-02
  removed: crank
  back: crank
`,
  good: `supplier millward "Millward Grinding"

part crank "Crankshaft"

day 2026-05-02
  removed: crank
  sent: crank to millward for "polish"

day 2026-05-09
  back: crank
`,
  message: ({ data }) => `${data.what} was not away: expected sent: before back:`,
});
