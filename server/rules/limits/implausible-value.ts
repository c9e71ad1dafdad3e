import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const implausibleValue = findingRule<"implausible-value">({
  code: "implausible-value",
  group: "Limits and measurements",
  severity: "warning",
  summary: "A reading is about ten times off what it should be near",
  why: "A slipped decimal or a wrong unit, most likely; as it stands it says that the part is something else.",
  remedy:
    "Correct the figure or its unit; if it is right, correct the size or limit that it is compared with.",
  source: "common practice, no source",
  bad: `part spring "Road spring"
  size: free_length 292 mm

day 2026-05-02
  measured: spring free_length 29.2 mm
`,
  good: `part spring "Road spring"
  size: free_length 292 mm

day 2026-05-02
  measured: spring free_length 292 mm
`,
  message: ({ data }) =>
    `${data.characteristic} ${say(data.reading)} is ${times(data.factor)} the ${say(data.nominal)} expected: a slipped decimal, or another unit?`,
});

function times(factor: number): string {
  return factor < 1 ? `1/${Math.round(1 / factor)} of` : `${Math.round(factor)} times`;
}
