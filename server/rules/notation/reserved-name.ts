import { findingRule } from "../rule.ts";
import { foundInstead } from "./text-fault-words.ts";

export const reservedName = findingRule<"reserved-name">({
  code: "reserved-name",
  group: "Notation",
  severity: "error",
  summary: "A name that the notation reads as something else",
  why: "Where such a name is referred to, it is taken for a thread or a word of the record, so nothing could ever lead to it.",
  remedy: "Choose another name.",
  bad: `part M10 "Bolt"
`,
  good: `part bolt_m10 "Bolt"
`,
  message: ({ data }) => foundInstead(data),
});
