import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const recheckDue = findingRule<"recheck-due">({
  code: "recheck-due",
  group: "Joints",
  severity: "warning",
  summary: "A joint has run longer than it may before it is checked again",
  why: "Paint, gaskets and new threads settle in the first hours, and the clamping goes with it: wheels are the usual example.",
  remedy: "Check it and write `rechecked:` with what you found, or torque it again.",
  source: "wheels after the first run and 50 to 100 km: common practice, no source",
  bad: `joint wheel_nuts "Wheel nuts"
  torque: 90 N.m
  recheck: after 1 h running

day 2026-05-02
  loosened: wheel_nuts
  torqued: wheel_nuts 90 N.m
  ran: vehicle 1.2 h 40 km

day 2026-05-09
  ran: vehicle 2 h 70 km
`,
  good: `joint wheel_nuts "Wheel nuts"
  torque: 90 N.m
  recheck: after 1 h running

day 2026-05-02
  loosened: wheel_nuts
  torqued: wheel_nuts 90 N.m
  ran: vehicle 1.2 h 40 km
  rechecked: wheel_nuts 90 N.m held

day 2026-05-09
  ran: vehicle 2 h 70 km
`,
  message: ({ data: { joint, ran, due, again } }) =>
    `${joint} has run ${say(ran)} since it was ${again ? "checked" : "tightened"}: expected a check after ${say(due)}`,
});
