import { findingRule } from "../rule.ts";

export const fittedNotInspected = findingRule<"fitted-not-inspected">({
  code: "fitted-not-inspected",
  group: "Order of things",
  severity: "warning",
  summary: "A safety-critical part of unknown past goes back without having been looked at",
  why: "While it is off is the time to find the crack, the wear or the wrong part; once it is on, nobody will.",
  remedy:
    "Inspect it before it is fitted, and write down how: inspected: … by eye, crack_test, magnetic_particle.",
  source: "common practice, no source",
  bad: `vehicle "Example"
  past: unknown

part arm "Steering arm"
  safety: critical

day 2026-05-02
  removed: arm

day 2026-05-09
  fitted: arm
`,
  good: `vehicle "Example"
  past: unknown

part arm "Steering arm"
  safety: critical

day 2026-05-02
  removed: arm

day 2026-05-09
  inspected: arm by magnetic_particle
  fitted: arm
`,
  message: ({ data }) =>
    `${data.what} goes back uninspected: expected an inspection or a measurement first, since it is safety-critical and its past is unknown`,
});
