import { COARSEST_SHARE } from "../../build/figures.ts";
import { findingRule } from "../rule.ts";
import { say, sayShare } from "../words.ts";

export const gaugeTooCoarse = findingRule<"gauge-too-coarse">({
  code: "gauge-too-coarse",
  group: "Limits and measurements",
  severity: "information",
  summary: "A gauge whose uncertainty takes up much of what it is to judge",
  why: "Of a zone of 0.08 mm a gauge good to 0.02 mm leaves half: readings near either end prove nothing.",
  remedy:
    "Use a finer gauge for this. Up to a tenth of the zone is good practice; over a quarter hardly measures.",
  source: "common practice, no source (the tenth is an old shop rule)",
  bad: `gauge vernier "Vernier caliper"
  reads: 0..150 mm
  uncertainty: ± 0.03 mm

part disc "Brake disc"
  limit: thickness 9.40..9.60 mm

day 2026-05-02
  measured: disc thickness 9.50 mm with vernier
`,
  good: `gauge mic25 "Micrometer"
  reads: 0..25 mm
  uncertainty: ± 0.004 mm

part disc "Brake disc"
  limit: thickness 9.40..9.60 mm

day 2026-05-02
  measured: disc thickness 9.50 mm with mic25
`,
  grade: ({ data }) =>
    data.is === "low in its range" || (data.is === "coarse for a limit" && data.ratio > COARSEST_SHARE)
      ? "warning"
      : undefined,
  message: ({ data }) =>
    data.is === "low in its range"
      ? `${say(data.reading)} is ${sayShare(data.ratio, data.least)} of the ${say(data.greatest)} that ${data.gauge} reads up to: expected at least ${sayShare(data.least)}`
      : `${data.gauge} is good to ± ${say(data.uncertainty)}, ${sayShare(data.ratio, data.most)} of the zone of ${say(data.zone)}: expected at most ${sayShare(data.most)}`,
});
