import { findingRule } from "../rule.ts";

export const tightenedByFeel = findingRule<"tightened-by-feel">({
  code: "tightened-by-feel",
  group: "Joints",
  severity: "warning",
  summary: "A safety-critical joint is tightened by feel",
  why: "Feel is out by half and more, and nobody can check it afterwards.",
  remedy: "Torque it to the maker's figure, and write the figure down.",
  source: "common practice, no source",
  bad: `part hub "Hub"
  safety: critical

joint hub_bolts "Hub to upright"
  joins: hub
  torque: 40 N.m

day 2026-05-02
  tightened: hub_bolts
`,
  good: `part hub "Hub"
  safety: critical

joint hub_bolts "Hub to upright"
  joins: hub
  torque: 40 N.m

day 2026-05-02
  torqued: hub_bolts 40 N.m
`,
  message: ({ data }) =>
    data.torqueStated
      ? `${data.joint} can hurt and is tightened by feel: expected its torque`
      : `${data.joint} can hurt and is tightened by feel: expected a torque for it`,
});
