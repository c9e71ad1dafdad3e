import { checkingRule } from "../rule.ts";
import { contradictions } from "./contradictions.ts";

export const identityContradicted = checkingRule({
  code: "identity-contradicted",
  group: "Lives and supply",
  severity: "warning",
  summary: "A part's dimensions speak against what it was identified as",
  why: "What is ordered by that name will not fit, or will fit badly; the tolerance of a new part, wear and the uncertainty of the measurement are allowed for.",
  remedy:
    "Measure again; if the figures are right, find out what else it can be and correct the identification.",
  source: "the standard of the part that is named; the allowance for wear is common practice, no source",
  bad: `part wheel.bearing "Wheel bearing"
  price: 7.20 GBP
  size: bore 17 mm
  size: outside 47 mm
  size: width 14 mm

day 2026-05-02
  identified: wheel.bearing as "6203"
`,
  good: `part wheel.bearing "Wheel bearing"
  price: 7.20 GBP
  size: bore 17 mm
  size: outside 47 mm
  size: width 14 mm

day 2026-05-02
  identified: wheel.bearing as "6303"
`,
  check: (build) => (build.diary.facts.of("identified").length === 0 ? [] : contradictions(build)),
});
