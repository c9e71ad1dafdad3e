import { findingRule } from "../rule.ts";
import { list } from "../words.ts";

export const measuredWithoutLimit = findingRule<"measured-without-limit">({
  code: "measured-without-limit",
  group: "Limits and measurements",
  severity: "hint",
  summary: "A characteristic is measured that has no limit",
  why: "Nothing says what the reading should be, so it cannot be judged; sometimes the name is merely spelt otherwise than in the limit.",
  remedy: "Give the part a limit or a size of that name, or correct the name.",
  bad: `part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-05-02
  measured: disc thickness 9.2 mm
  measured: disc width 9.2 mm
`,
  good: `part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-05-02
  measured: disc thickness 9.2 mm
`,
  message: ({ data }) =>
    `${data.what} has no limit called ${data.characteristic}${data.known.length === 0 ? "" : `; it has ${list(data.known)}`}`,
});
