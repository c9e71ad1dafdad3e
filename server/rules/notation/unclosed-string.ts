import { findingRule } from "../rule.ts";
import { shortened } from "./text-fault-words.ts";

export const unclosedString = findingRule<"unclosed-string">({
  code: "unclosed-string",
  group: "Notation",
  severity: "error",
  summary: "A text in quotation marks does not end on its line",
  why: "Everything to the end of the line was taken as text, clauses and all.",
  remedy: 'Close the text with ".',
  bad: `part hub "Hub"
  number: "HS-1
`,
  good: `part hub "Hub"
  number: "HS-1"
`,
  message: ({ data }) => `the text ${shortened(data.found)} is not closed: expected ${data.expected}`,
});
