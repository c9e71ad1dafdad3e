import { findingRule } from "../rule.ts";

export const unusedDefinition = findingRule<"unused-definition">({
  code: "unused-definition",
  group: "Notation",
  severity: "hint",
  summary: "A supplier, gauge or setup that nothing refers to",
  why: "It may be misspelt elsewhere, or left over from another build.",
  remedy: "Refer to it, or take its block out.",
  bad: `gauge dti "Dial gauge"
  reads: 0..10 mm

part disc "Brake disc"
  limit: runout max 0.10 mm

day 2026-05-02
  measured: disc runout 0.05 mm
`,
  good: `gauge dti "Dial gauge"
  reads: 0..10 mm

part disc "Brake disc"
  limit: runout max 0.10 mm

day 2026-05-02
  measured: disc runout 0.05 mm with dti
`,
  message: ({ data }) => `nothing refers to the ${data.kind} ${data.name}: expected it somewhere in the log`,
});
