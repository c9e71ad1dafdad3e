import { findingRule } from "../rule.ts";
import { onNewHardware } from "./new-hardware.ts";

export const selfLockingReused = findingRule<"self-locking-reused">({
  code: "self-locking-reused",
  group: "Joints",
  severity: "warning",
  summary: "A self-locking nut that was undone is used again",
  why: "Its grip on the thread is what locks it, and it loses some each time it comes off; nylon is good to 120 °C at most. Where the bolt turns in service it is a castle nut and a pin that hold. On a safety-critical joint this is an error.",
  remedy: "Fit a new nut and write `on new hardware`.",
  source: "common practice, no source",
  bad: `part damper "Damper"

joint damper_upper "Damper to frame"
  joins: damper
  nut: self_locking nylon M10x1.5 class 8
  torque: 45 N.m

day 2026-05-02
  loosened: damper_upper
  torqued: damper_upper 45 N.m
`,
  good: `part damper "Damper"

joint damper_upper "Damper to frame"
  joins: damper
  nut: self_locking nylon M10x1.5 class 8
  torque: 45 N.m

day 2026-05-02
  loosened: damper_upper
  torqued: damper_upper 45 N.m on new hardware
`,
  grade: ({ critical }) => (critical ? "error" : undefined),
  message: ({ data }) =>
    `${data.joint} was undone and is done up again on the same self-locking nut: expected new hardware`,
  fixes: ({ place }, build) => onNewHardware(place, build),
});
