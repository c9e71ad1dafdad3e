import { findingRule } from "../rule.ts";
import { DEFERENCE, PRECAUTIONS } from "./precautions.ts";

export const safetyCaution = findingRule<"safety-caution">({
  code: "safety-caution",
  group: "Care",
  severity: "information",
  summary: "The work of this day can hurt: the usual precaution, once for each kind",
  why: "The log knows what is being worked on, and a line at the right moment costs nothing.",
  remedy:
    "Take the precaution. It is shown once in a day for each kind of work; the maker's manual, local rules and a licensed practitioner come first.",
  source: "common practice, no source",
  bad: `part electrics.battery "Battery"

day 2026-05-02
  removed: electrics.battery
`,
  good: `part electrics.lamp "Lamp"

day 2026-05-02
  removed: electrics.lamp
`,
  message: ({ data: { kind } }) => `${PRECAUTIONS[kind]}; ${DEFERENCE}`,
});
