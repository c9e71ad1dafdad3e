import { findingRule } from "../rule.ts";
import { shortened } from "./text-fault-words.ts";

export const unreadableLine = findingRule<"unreadable-line">({
  code: "unreadable-line",
  group: "Notation",
  severity: "error",
  summary: "A line in the first column starts no block",
  why: "Only the header of a block stands in the first column, so the line is neither a header nor part of the story.",
  remedy:
    "Indent the line if it belongs to the block above; correct its first word if it was to start a block.",
  bad: `part hub "Hub"
Stripped the corner.
`,
  good: `part hub "Hub"
  Stripped the corner.
`,
  message: ({ data }) => `${shortened(data.found)} stands in the first column: expected ${data.expected}`,
});
