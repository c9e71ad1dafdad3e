import { findingRule } from "../rule.ts";

export const gaugeOutOfDate = findingRule<"gauge-out-of-date">({
  code: "gauge-out-of-date",
  group: "Limits and measurements",
  severity: "warning",
  summary: "A gauge is used after its calibration ran out",
  why: "What it shows may be right, but nothing proves it: the reading counts for less than it says.",
  remedy: "Have the gauge calibrated, and write it down; or measure again with one that is in date.",
  source: "ISO 10012, from memory: measuring equipment is used within its confirmed interval",
  bad: `gauge dti "Dial gauge"
  reads: 0..10 mm
  calibrated: 2025-03-01 for 12 month

part disc "Brake disc"
  limit: runout max 0.10 mm

day 2026-05-02
  measured: disc runout 0.05 mm with dti
`,
  good: `gauge dti "Dial gauge"
  reads: 0..10 mm
  calibrated: 2026-03-01 for 12 month

part disc "Brake disc"
  limit: runout max 0.10 mm

day 2026-05-02
  measured: disc runout 0.05 mm with dti
`,
  message: ({ data }) => `${data.gauge} was good until ${data.good} and is used on ${data.used}`,
});
