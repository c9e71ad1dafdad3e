import { findingRule } from "../rule.ts";
import { definingFixes, expectedNames } from "./defining-fixes.ts";

export const unknownReference = findingRule<"unknown-reference">({
  code: "unknown-reference",
  group: "Notation",
  severity: "error",
  summary: "A reference that leads to nothing",
  why: "The fact or record says something of a thing that does not exist, so it counts for nothing.",
  remedy: "Correct the spelling, or define the thing.",
  bad: `part hub "Hub"

day 2026-05-02
  removed: hubb
`,
  good: `part hub "Hub"

day 2026-05-02
  removed: hub
`,
  message: ({ data }) => `${data.text} leads to nothing${expectedNames(data)}`,
  fixes: definingFixes,
});
