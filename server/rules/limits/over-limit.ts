import { findingRule } from "../rule.ts";
import { say, sayIn, sayReadings } from "../words.ts";

export const overLimit = findingRule<"over-limit">({
  code: "over-limit",
  group: "Limits and measurements",
  severity: "error",
  summary: "A reading is above its upper limit",
  why: "The part is worn, bent or wrong beyond what its maker allows, even when the uncertainty of the reading is taken off.",
  remedy:
    "Decide on the part: renew, make or recondition it. If the reading is wrong, measure again and write that down too.",
  source: "ISO 14253-1, decision rule for proving nonconformity",
  bad: `part front.disc "Brake disc"
  limit: runout max 0.10 mm

day 2026-05-02
  measured: front.disc runout 0.14 mm
`,
  good: `part front.disc "Brake disc"
  limit: runout max 0.10 mm

day 2026-05-02
  measured: front.disc runout 0.06 mm
`,
  message: ({ data }) =>
    `${data.characteristic} ${say(data.reading)} is over its limit of ${say(data.limit)} by ${sayIn(data.by, data.reading)}${sayReadings(data)}`,
});
