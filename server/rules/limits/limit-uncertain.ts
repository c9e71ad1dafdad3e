import { findingRule } from "../rule.ts";
import { say, sayReadings, sayUncertainty } from "../words.ts";

export const limitUncertain = findingRule<"limit-uncertain">({
  code: "limit-uncertain",
  group: "Limits and measurements",
  severity: "warning",
  summary: "A reading is so near its limit that it proves nothing",
  why: "Within the uncertainty of the gauge the part may be good or may be worn out; on a safety-critical part that is an open item.",
  remedy: "Measure again with a finer gauge, or treat the part as out of limits.",
  source:
    "ISO 14253-1, decision rules for proving conformity and nonconformity; U at k = 2 is the guard band of the 1998 and 2013 editions, stricter than the 2017 default",
  bad: `part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-05-02
  measured: disc thickness 8.42 mm ± 0.05 mm
`,
  good: `part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-05-02
  measured: disc thickness 9.00 mm ± 0.05 mm
`,
  message: ({ data }) =>
    `${data.characteristic} ${say(data.reading)}${sayUncertainty(data)} is too near its limit of ${say(data.limit)} to prove that it is within, or that it is not${sayReadings(data)}`,
});
