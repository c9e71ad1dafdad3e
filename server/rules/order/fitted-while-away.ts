import { findingRule } from "../rule.ts";

export const fittedWhileAway = findingRule<"fitted-while-away">({
  code: "fitted-while-away",
  group: "Order of things",
  severity: "error",
  summary: "A part is fitted that is still out for work",
  why: "The log says that the part is elsewhere, so what was fitted is not it, or its return, and perhaps a bill, was never written down.",
  remedy: "Write back: for the day it returned, or name the part that was fitted.",
  bad: `supplier millward "Millward Grinding"

part crank "Crankshaft"

day 2026-05-02
  removed: crank
  sent: crank to millward for "polish"

day 2026-05-09
  fitted: crank
`,
  good: `supplier millward "Millward Grinding"

part crank "Crankshaft"

day 2026-05-02
  removed: crank
  sent: crank to millward for "polish"

day 2026-05-09
  back: crank
  fitted: crank
`,
  message: ({ data }) =>
    `${data.what} is still away at ${data.supplier}: expected it back before it is fitted`,
});
