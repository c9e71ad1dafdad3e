import { findingRule } from "../rule.ts";

export const unknownUnit = findingRule<"unknown-unit">({
  code: "unknown-unit",
  group: "Notation",
  severity: "error",
  summary: "A unit or currency that the notation does not know",
  why: "A figure without a known unit cannot be compared with anything.",
  remedy:
    "Write the unit as the message shows it. Units are spelt with care for case: mm and Mm differ by a thousand million.",
  bad: `part hub "Hub"
  size: width 6 inches
`,
  good: `part hub "Hub"
  size: width 6 in
`,
  message: ({ data }) => `${data.found} is no unit here: ${data.reason ?? `expected ${data.expected}`}`,
});
