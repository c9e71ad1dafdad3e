import { findingRule } from "../rule.ts";
import { say, sayIn, sayReadings } from "../words.ts";

export const underLimit = findingRule<"under-limit">({
  code: "under-limit",
  group: "Limits and measurements",
  severity: "error",
  summary: "A reading is below its lower limit",
  why: "The part is worn or wrong beyond what its maker allows, even when the uncertainty of the reading is taken off.",
  remedy:
    "Decide on the part: renew, make or recondition it. If the reading is wrong, measure again and write that down too.",
  source: "ISO 14253-1, decision rule for proving nonconformity",
  bad: `part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-05-02
  measured: disc thickness 8.1 mm
`,
  good: `part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-05-02
  measured: disc thickness 9.2 mm
`,
  message: ({ data }) =>
    `${data.characteristic} ${say(data.reading)} is under its limit of ${say(data.limit)} by ${sayIn(data.by, data.reading)}${sayReadings(data)}`,
});
