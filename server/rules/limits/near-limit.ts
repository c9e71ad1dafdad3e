import { findingRule } from "../rule.ts";
import { say, sayIn, sayReadings, sayShare } from "../words.ts";

export const nearLimit = findingRule<"near-limit">({
  code: "near-limit",
  group: "Limits and measurements",
  severity: "information",
  summary: "A reading is within its limit, but little is left",
  why: "It will be at its limit before the part next comes off, or soon after.",
  remedy:
    "Think of ordering the part. How near is near stands in the vehicle's near: record (10 % of the zone).",
  source: "common practice, no source",
  bad: `part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-05-02
  measured: disc thickness 8.45 mm
`,
  good: `part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-05-02
  measured: disc thickness 9.2 mm
`,
  message: ({ data }) =>
    `${data.characteristic} ${say(data.reading)} is ${sayIn(data.by, data.reading)} inside its limit of ${say(data.limit)}: ${sayShare(data.shareLeft)} of the ${say(data.zone)} is left${sayReadings(data)}`,
});
