import { findingRule } from "../rule.ts";

export const frictionAssumed = findingRule<"friction-assumed">({
  code: "friction-assumed",
  group: "Joints",
  severity: "hint",
  summary: "The preload of a joint is computed with a friction that nobody has stated",
  why: "Oiled threads take a quarter more load from the same torque than dry ones: the figures are worth what the friction is.",
  remedy:
    "Write `friction: dry`, `oiled`, `zinc` or what it is; `default: friction zinc` in an assembly says it for all below.",
  source: "nut factors: Shigley, Mechanical Engineering Design",
  bad: `joint bracket "Bracket to frame"
  bolt: 2 x M8x1.25x30 class 8.8
  torque: 24 N.m
`,
  good: `joint bracket "Bracket to frame"
  bolt: 2 x M8x1.25x30 class 8.8
  torque: 24 N.m
  friction: zinc
`,
  message: ({ data }) =>
    `${data.joint}: no friction is stated, so its threads are taken as ${data.friction}: expected friction:`,
});
