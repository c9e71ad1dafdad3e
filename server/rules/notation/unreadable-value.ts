import { findingRule } from "../rule.ts";
import { foundInstead } from "./text-fault-words.ts";

export const unreadableValue = findingRule<"unreadable-value">({
  code: "unreadable-value",
  group: "Notation",
  severity: "error",
  summary: "A value is not of the kind that its place takes",
  why: "The clause is left out, so what it says does not count.",
  remedy: "Write the value in the form that the message shows.",
  bad: `part hub "Hub"
  material: stel
`,
  good: `part hub "Hub"
  material: steel
`,
  message: ({ data }) => foundInstead(data),
});
