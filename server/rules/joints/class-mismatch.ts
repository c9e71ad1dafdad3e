import { findingRule } from "../rule.ts";

export const classMismatch = findingRule<"class-mismatch">({
  code: "class-mismatch",
  group: "Joints",
  severity: "warning",
  summary: "A nut of a lower class than its bolt",
  why: "The nut's thread strips before the bolt has the load that its torque is meant to give it.",
  remedy: "Fit a nut of the first figure of the bolt's class at least: class 8 for 8.8, class 10 for 10.9.",
  source: "ISO 898-2, nuts and the bolts that they go with",
  bad: `joint flange "Shaft to flange"
  bolt: 4 x M8x1.25x35 class 10.9
  nut: plain M8x1.25 class 8
  torque: 34 N.m
  friction: zinc
`,
  good: `joint flange "Shaft to flange"
  bolt: 4 x M8x1.25x35 class 10.9
  nut: plain M8x1.25 class 10
  torque: 34 N.m
  friction: zinc
`,
  message: ({ data }) =>
    `${data.joint}: a nut of ${data.nut} on a bolt of ${data.bolt}: expected a nut of ${data.needed} at least`,
});
