import { findingRule } from "../rule.ts";
import { say, sayIn, sayUncertainty } from "../words.ts";

export const fitOutOfRange = findingRule<"fit-out-of-range">({
  code: "fit-out-of-range",
  group: "Limits and measurements",
  severity: "error",
  summary: "A fit is too tight or too loose by the readings of its two parts",
  why: "A bearing that turns in its housing, or a shaft that will not go in: neither shows until it is together, and then it is too late.",
  remedy:
    "Pair the parts otherwise, renew or work one of them, or measure again. A fit that the uncertainty of the readings leaves open is a warning: measure with a finer gauge.",
  source:
    "ISO 14253-1, decision rule, with the uncertainty of both readings combined (JCGM 100:2008, equation 10)",
  bad: `part pin "King pin"
  fit: diameter in bush.bore clearance 0.01..0.04 mm

part bush "Bush"

day 2026-05-02
  measured: pin diameter 19.98 mm
  measured: bush bore 20.05 mm
`,
  good: `part pin "King pin"
  fit: diameter in bush.bore clearance 0.01..0.04 mm

part bush "Bush"

day 2026-05-02
  measured: pin diameter 19.98 mm
  measured: bush bore 20.00 mm
`,
  grade: ({ data }) => (data.proven ? undefined : "warning"),
  message: ({ data }) => {
    const fit = `${data.sense} of ${data.what} in ${data.other} is ${say(data.actual)}${sayUncertainty(data)}`;
    const limit = `${data.side === "upper" ? "at most" : "at least"} ${say(data.limit)}`;
    return data.proven
      ? `${fit}: expected ${limit}, it is ${sayIn(data.by, data.actual)} ${data.side === "upper" ? "more" : "less"}`
      : `${fit}: too near to its limit to prove the ${limit} that it must be`;
  },
});
