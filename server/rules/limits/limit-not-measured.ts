import { findingRule } from "../rule.ts";

export const limitNotMeasured = findingRule<"limit-not-measured">({
  code: "limit-not-measured",
  group: "Limits and measurements",
  severity: "warning",
  summary: "A limit that nothing has been measured against, while something leans on the part",
  why: "The part runs, or is about to, and nothing shows that it is within what its maker allows. On a safety-critical part that keeps a hold point shut.",
  remedy: "Measure it, and write the reading down.",
  bad: `vehicle "Example"
  past: known
  today: 2026-05-09

part disc "Brake disc"
  safety: critical
  limit: thickness min 8.4 mm new 9.5 mm

hold first_run "First run"
  needs: limits
  planned: 2026-05-12
`,
  good: `vehicle "Example"
  past: known
  today: 2026-05-09

part disc "Brake disc"
  safety: critical
  limit: thickness min 8.4 mm new 9.5 mm

hold first_run "First run"
  needs: limits
  planned: 2026-05-12

day 2026-05-02
  measured: disc thickness 9.2 mm
`,
  grade: ({ data }) => (data.critical ? undefined : "hint"),
  message: ({ data }) =>
    `${data.characteristic} of ${data.what} is not measured, ${LEANS[data.leans]}${data.hold === undefined ? "" : ` ${data.hold}`}: expected a reading against its limit`,
});

const LEANS = { ran: "and it has run", released: "and it was released by", planned: "ahead of" } as const;
