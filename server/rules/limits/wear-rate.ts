import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const wearRate = findingRule<"wear-rate">({
  code: "wear-rate",
  group: "Limits and measurements",
  severity: "information",
  summary: "A characteristic wears towards its limit, and when it gets there",
  why: "The readings over time say how fast it goes: the part can be ordered before it is needed.",
  remedy:
    "Plan to renew the part, or measure more often. The figure is a straight line through the readings and is never drawn further ahead than they reach back.",
  source:
    "least squares, JCGM 100:2008 annex H.3; two readings differ when they are more than √2 U apart (equation 10)",
  bad: `part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-03-02
  measured: disc thickness 9.30 mm

day 2026-05-02
  measured: disc thickness 8.80 mm
`,
  good: `part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-05-02
  measured: disc thickness 9.40 mm
`,
  message: ({ data }) =>
    `${data.characteristic} changes by ${say(data.rate)}: at that rate it reaches ${say(data.limit)} after ${data.over === "h" ? "another " : ""}${say(data.left)}${data.over === "h" ? " of running" : ""}`,
});
