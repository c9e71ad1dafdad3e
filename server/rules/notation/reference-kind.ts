import { withArticle } from "../../../grammar/article.ts";
import { findingRule } from "../rule.ts";

export const referenceKind = findingRule<"reference-kind">({
  code: "reference-kind",
  group: "Notation",
  severity: "error",
  summary: "A reference to another kind of thing than the place takes",
  why: "A joint cannot be removed and a part cannot be torqued, so the fact counts for nothing.",
  remedy: "Name the thing that is meant, or write the fact that suits this kind.",
  bad: `part hub "Hub"

joint hub_bolts "Hub bolts"
  joins: hub
  torque: 24 N.m

day 2026-05-02
  removed: hub_bolts
`,
  good: `part hub "Hub"

joint hub_bolts "Hub bolts"
  joins: hub
  torque: 24 N.m

day 2026-05-02
  removed: hub
`,
  message: ({ data }) => `${data.text} is ${withArticle(data.kind)}; expected ${data.wanted}`,
});
