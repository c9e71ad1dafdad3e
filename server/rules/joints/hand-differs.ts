import { findingRule } from "../rule.ts";

export const handDiffers = findingRule<"hand-differs">({
  code: "hand-differs",
  group: "Joints",
  severity: "error",
  summary: "A left-hand thread meets a right-hand one",
  why: "They do not go together, or go together once and are spoilt.",
  remedy: "Find out which of the two is written wrong, or fit the other.",
  bad: `joint wheel_left "Wheel nut, left side"
  stud: 1 x 1/2-20 UNF x 2 in LH
  nut: plain 1/2-20 UNF
  torque: 60 lbf.ft
`,
  good: `joint wheel_left "Wheel nut, left side"
  stud: 1 x 1/2-20 UNF x 2 in LH
  nut: plain 1/2-20 UNF LH
  torque: 60 lbf.ft
`,
  message: ({ data }) => `${data.joint}: bolt ${data.bolt} and nut ${data.nut}: expected both of one hand`,
});
