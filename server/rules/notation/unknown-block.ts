import { findingRule } from "../rule.ts";

export const unknownBlock = findingRule<"unknown-block">({
  code: "unknown-block",
  group: "Notation",
  severity: "error",
  summary: "A block begins with a word that starts none",
  why: "Everything below the header is read as if it belonged to the nearest kind of block, which may not be the one meant.",
  remedy: "Correct the word that the block begins with.",
  bad: `prat hub "Hub"
`,
  good: `part hub "Hub"
`,
  message: ({ data }) => `${data.found} starts no block: expected ${data.expected}`,
});
