import { findingRule } from "../rule.ts";

export const frictionUnnamed = findingRule<"friction-unnamed">({
  code: "friction-unnamed",
  group: "Notation",
  severity: "error",
  summary: "A friction figure that does not say what it is",
  why: "A nut factor of 0.18 and a thread friction of 0.18 give bolt forces that differ by about a third, so the figure cannot be used until it is named.",
  remedy: "Write nut_factor before it, or give the friction of thread and head.",
  source: "VDI 2230 reckons with the friction of thread and head, Shigley with the nut factor",
  bad: `joint disc_bolts "Disc bolts"
  torque: 24 N.m
  friction: 0.18
`,
  good: `joint disc_bolts "Disc bolts"
  torque: 24 N.m
  friction: nut_factor 0.18
`,
  message: ({ data }) => `${data.found} alone does not say ${data.expected}`,
});
