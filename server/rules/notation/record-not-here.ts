import { findingRule } from "../rule.ts";

export const recordNotHere = findingRule<"record-not-here">({
  code: "record-not-here",
  group: "Notation",
  severity: "error",
  summary: "A record stands in a block that does not take it",
  why: "What it says is lost: this kind of block has no place for it.",
  remedy: "Move the line into a block that takes it, or begin it with | where it is meant as prose.",
  bad: `part hub "Hub"
  removed: hub
`,
  good: `part hub "Hub"

day 2026-05-02
  removed: hub
`,
  message: ({ data }) => `${data.found}: does not belong in this block: expected ${data.expected}`,
});
