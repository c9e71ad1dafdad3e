import { findingRule } from "../rule.ts";
import { say, sayUncertainty } from "../words.ts";

export const pairDiffers = findingRule<"pair-differs">({
  code: "pair-differs",
  group: "Limits and measurements",
  severity: "warning",
  summary: "Two sides that must agree differ",
  why: "Springs, brakes and settings that differ from side to side make a car pull, lean or lock one wheel first.",
  remedy: "Measure both again under the same conditions; then match, adjust or renew them as a pair.",
  source: "common practice, no source; the verdict by ISO 14253-1",
  bad: `part left.spring "Road spring"
  pair: rate with right.spring.rate within 3 %

part right.spring "Road spring"

day 2026-05-02
  measured: left.spring rate 28.0 N/mm
  measured: right.spring rate 26.0 N/mm
`,
  good: `part left.spring "Road spring"
  pair: rate with right.spring.rate within 3 %

part right.spring "Road spring"

day 2026-05-02
  measured: left.spring rate 28.0 N/mm
  measured: right.spring rate 27.5 N/mm
`,
  message: ({ data }) => {
    const allowed =
      data.within.unit.symbol === "%" ? `${say(data.within)}, ${say(data.allowed)}` : say(data.allowed);
    const differ = `${data.what} and ${data.other} differ by ${say(data.difference)}${sayUncertainty(data)}`;
    return data.proven
      ? `${differ}: expected at most ${allowed}`
      : `${differ}: too near to the ${allowed} allowed to prove that they agree`;
  },
});
