import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const threadbound = findingRule<"threadbound">({
  code: "threadbound",
  group: "Joints",
  severity: "error",
  summary: "The plain shank of a bolt is longer than what it clamps",
  why: "The nut runs onto the end of the thread and stops there: the wrench clicks, and the parts under the head are loose.",
  remedy:
    "Fit a bolt with more thread, or a washer more. Where the thread is longer than the standard has it, state thread_length.",
  source: "length of thread: ISO 888; inch bolts ASME B18.2.1, from memory",
  bad: `joint bracket "Bracket to frame"
  bolt: 1 x M8x1.25x60 class 8.8
  nut: tapped 26 mm in steel
  grip: 35 mm
  torque: 24 N.m
  friction: zinc
`,
  good: `joint bracket "Bracket to frame"
  bolt: 1 x M8x1.25x60 class 8.8
  thread_length: 30 mm
  nut: tapped 26 mm in steel
  grip: 35 mm
  torque: 24 N.m
  friction: zinc
`,
  message: ({ data }) =>
    `${data.joint}: the shank${data.standard === undefined ? "" : ` by ${data.standard}`} is ${say(data.shank)} and clamps ${say(data.clamped)}: expected no more shank than that, ${say(data.by)} less`,
});
