import { findingRule } from "../rule.ts";

export const gaugeInDoubt = findingRule<"gauge-in-doubt">({
  code: "gauge-in-doubt",
  group: "Limits and measurements",
  severity: "warning",
  summary: "A reading was taken with a gauge that was then found wrong",
  why: "Nobody knows since when the gauge was out, so every reading since it was last known good may be wrong.",
  remedy: "Take the reading again with a gauge that is right.",
  source:
    "ISO 10012, from memory: when equipment is found wrong, the results since it was last confirmed are looked at again",
  bad: `gauge dti "Dial gauge"
  reads: 0..10 mm
  calibrated: 2026-03-01 for 12 month

part disc "Brake disc"
  limit: runout max 0.10 mm

day 2026-05-02
  measured: disc runout 0.05 mm with dti

day 2026-05-09
  found: dti wrong "sticks at half scale"
`,
  good: `gauge dti "Dial gauge"
  reads: 0..10 mm
  calibrated: 2026-03-01 for 12 month

part disc "Brake disc"
  limit: runout max 0.10 mm

day 2026-05-02
  measured: disc runout 0.05 mm with dti

day 2026-05-09
  found: dti wrong "sticks at half scale"
  measured: disc runout 0.06 mm "with the club's gauge"
`,
  message: ({ data }) =>
    `${data.gauge} was found ${data.found.replaceAll("_", " ")} on ${data.on}${data.good === undefined ? "" : ` and was last known good on ${data.good}`}: expected this reading to be taken again`,
});
