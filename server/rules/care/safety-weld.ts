import { findingRule } from "../rule.ts";
import { list } from "../words.ts";
import { DEFERENCE } from "./precautions.ts";

export const safetyWeld = findingRule<"safety-weld">({
  code: "safety-weld",
  group: "Care",
  severity: "warning",
  summary: "Welding, straightening or plating is sent out on a part whose failure can hurt",
  why: "Heat, bending and plating take away the strength that such a part was made with, and nothing shows from outside.",
  remedy:
    "Renew it where one can be had. Else have it done by a qualified welder, crack tested after and looked at by a second pair of eyes, and waive this with the reason.",
  source: "common practice, no source",
  bad: `supplier hadley "Hadley, welding"

part front.radius_rod "Radius rod"
  material: steel
  safety: critical

day 2026-05-02
  removed: front.radius_rod
  sent: front.radius_rod to hadley for "straighten" due 2026-06-10
`,
  good: `supplier hadley "Hadley, machining"

part front.radius_rod "Radius rod"
  material: steel
  safety: critical

day 2026-05-02
  removed: front.radius_rod
  sent: front.radius_rod to hadley for "measure against the drawing" due 2026-06-10
`,
  message: ({ data: { what, work } }) =>
    `${list(what)} can hurt if it fails, and is sent out for "${work}": expected a new part, or a qualified welder and a crack test after; ${DEFERENCE}`,
});
