import { findingRule } from "../rule.ts";
import { list } from "../words.ts";
import { DEFERENCE } from "./precautions.ts";

export const embrittlement = findingRule<"embrittlement">({
  code: "embrittlement",
  group: "Care",
  severity: "error",
  summary: "A spring or a hard fastener is sent out for plating",
  why: "Electroplating drives hydrogen into hard steel, which can crack days later under a load that it has always borne.",
  remedy:
    "Ask the plater about baking, or have it coated another way: painted, zinc flake, phosphated. On what can hurt, do not plate springs or class 12.9 at all.",
  source: "common practice, no source",
  bad: `supplier ashworth "Ashworth Plating"

part front.spring "Road spring"
  safety: critical

day 2026-05-02
  sent: front.spring to ashworth for "zinc plate" due 2026-06-10
`,
  good: `supplier ashworth "Ashworth Plating"

part front.spring "Road spring"
  safety: critical

day 2026-05-02
  sent: front.spring to ashworth for "measure the rate" due 2026-06-10
`,
  grade: ({ data }) => (data.forbidden ? undefined : "warning"),
  message: ({ data: { what, work, forbidden } }) =>
    `${list(what)} sent out for "${work}" can turn brittle with hydrogen: expected ${forbidden ? "another coating on what can hurt" : "the plater asked about baking, or another coating"}; ${DEFERENCE}`,
});
