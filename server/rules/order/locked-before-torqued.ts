import { findingRule } from "../rule.ts";
import { sayStage } from "./place-words.ts";

export const lockedBeforeTorqued = findingRule<"locked-before-torqued">({
  code: "locked-before-torqued",
  group: "Order of things",
  severity: "warning",
  summary: "A joint is locked before it is torqued",
  why: "A pin, wire or tab goes in after the final torque; put in before, it comes out again or stops the nut short. Threadlocker goes on before.",
  remedy: "Torque the joint, then lock it.",
  bad: `part disc "Brake disc"
part hub "Hub"

joint disc_bolts "Disc to hub"
  joins: disc, hub
  torque: 24 N.m
  lock: lockwire

day 2026-05-02
  loosened: disc_bolts
  locked: disc_bolts with lockwire
`,
  good: `part disc "Brake disc"
part hub "Hub"

joint disc_bolts "Disc to hub"
  joins: disc, hub
  torque: 24 N.m
  lock: lockwire

day 2026-05-02
  loosened: disc_bolts
  torqued: disc_bolts 24 N.m
  locked: disc_bolts with lockwire
`,
  message: ({ data }) =>
    `${data.joint} is ${sayStage(data.state)}: expected it torqued before its ${data.lock.replace("_", " ")} goes in`,
});
