import { findingRule } from "../rule.ts";
import { say, sayNumber } from "../words.ts";

export const boltTooLong = findingRule<"bolt-too-long">({
  code: "bolt-too-long",
  group: "Joints",
  severity: "error",
  summary: "A bolt bottoms in its hole, or stands far out of its nut",
  why: "On the bottom of a blind hole the wrench clicks and nothing is clamped. Far past the nut a bolt only catches on things, so that is an information.",
  remedy:
    "Fit a shorter bolt. A hole that goes through has no bottom: state the depth of its thread as the whole length of it that the bolt may use.",
  source: "common practice, no source",
  bad: `joint cover "Cover to case"
  bolt: 6 x M6x1x30 class 8.8
  nut: tapped 12 mm in steel
  grip: 14 mm
  torque: 9 N.m
  friction: zinc
`,
  good: `joint cover "Cover to case"
  bolt: 6 x M6x1x25 class 8.8
  nut: tapped 12 mm in steel
  grip: 14 mm
  torque: 9 N.m
  friction: zinc
`,
  grade: ({ data }) => (data.into === "nut" ? "information" : undefined),
  message: ({ data }) =>
    data.into === "hole"
      ? `${data.joint}: the bolt reaches ${say(data.reach)} into a hole with ${say(data.depth)} of thread and bottoms: expected at least ${say(data.by)} less`
      : `${data.joint}: the bolt comes ${say(data.past)} past the nut, ${sayNumber(data.pitches)} pitches: more than ${data.most} are of no use`,
});
