import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const gaugeOutOfRange = findingRule<"gauge-out-of-range">({
  code: "gauge-out-of-range",
  group: "Limits and measurements",
  severity: "error",
  summary: "A gauge is said to have read what it cannot read",
  why: "Either another gauge was used, or the figure is wrong.",
  remedy: "Correct the gauge, the figure or its unit.",
  bad: `gauge mic25 "Micrometer"
  reads: 0..25 mm

part pin "King pin"
  limit: diameter 27.95..28.00 mm

day 2026-05-02
  measured: pin diameter 27.98 mm with mic25
`,
  good: `gauge mic50 "Micrometer"
  reads: 25..50 mm

part pin "King pin"
  limit: diameter 27.95..28.00 mm

day 2026-05-02
  measured: pin diameter 27.98 mm with mic50
`,
  message: ({ data }) => `${say(data.reading)} is outside what ${data.gauge} reads: ${data.range}`,
});
