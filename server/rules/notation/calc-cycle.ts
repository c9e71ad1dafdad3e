import { findingRule } from "../rule.ts";

export const calcCycle = findingRule<"calc-cycle">({
  code: "calc-cycle",
  group: "Notation",
  severity: "error",
  summary: "Calculations that build on each other in a circle",
  why: "None of them can be worked out before the others, so none has a value.",
  remedy: "Let one of them start from figures that are measured or sized.",
  bad: `part spring "Road spring"
  calc: rate = load / 20 mm
  calc: load = rate * 20 mm
`,
  good: `part spring "Road spring"
  calc: rate = load / 20 mm
  calc: load = 560 N
`,
  message: ({ data }) => `${data.names.join(" builds on ")}: expected one of them to start from figures`,
});
