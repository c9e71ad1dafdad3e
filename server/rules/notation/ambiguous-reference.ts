import { findingRule } from "../rule.ts";
import { list } from "../words.ts";

export const ambiguousReference = findingRule<"ambiguous-reference">({
  code: "ambiguous-reference",
  group: "Notation",
  severity: "error",
  summary: "A reference that could mean several things",
  why: "A short reference must leave no choice: the wrong corner could be taken for the right one.",
  remedy: "Write more of the path.",
  bad: `part left.hub "Hub"
part right.hub "Hub"

day 2026-05-02
  removed: hub
`,
  good: `part left.hub "Hub"
part right.hub "Hub"

day 2026-05-02
  removed: left.hub
`,
  message: ({ data }) =>
    `${data.text} could mean ${list(data.candidates, "or")}: expected one of them in full`,
});
