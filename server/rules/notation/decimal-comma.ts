import { findingRule } from "../rule.ts";

export const decimalComma = findingRule<"decimal-comma">({
  code: "decimal-comma",
  group: "Notation",
  severity: "error",
  summary: "A decimal comma where the notation takes a point",
  why: "A comma parts the items of a list, so 54,5 could be one figure or two.",
  remedy: "Write a point. With three figures behind the comma, say whether thousands or decimals were meant.",
  source: "ISO 80000-1 allows comma and point as the decimal sign; the notation takes the point alone",
  bad: `part hub "Hub"
  size: bore 54,5 mm
`,
  good: `part hub "Hub"
  size: bore 54.5 mm
`,
  message: ({ data }) => `${data.found} has a decimal comma: expected ${data.expected}`,
});
