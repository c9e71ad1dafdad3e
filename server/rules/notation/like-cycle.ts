import { findingRule } from "../rule.ts";

export const likeCycle = findingRule<"like-cycle">({
  code: "like-cycle",
  group: "Notation",
  severity: "error",
  summary: "Copies that copy each other",
  why: "A copy of a copy of itself has no first definition to start from, so none of them is carried out.",
  remedy: "Write one of the branches out, and let the others be like it.",
  bad: `assembly left "Left corner" like right
assembly right "Right corner" like left
`,
  good: `part left.hub "Hub"
assembly right "Right corner" like left
`,
  message: ({ data }) => `${data.paths.join(" is like ")}: expected one of them to be written out`,
});
