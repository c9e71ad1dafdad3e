import { findingRule } from "../rule.ts";

export const circuitUntested = findingRule<"circuit-untested">({
  code: "circuit-untested",
  group: "Systems and circuits",
  severity: "information",
  summary: "A circuit on which something leans has not been tested since it was last disturbed",
  why: "A chafed wire or a wrong terminal shows when the circuit is tried, not when it is drawn.",
  remedy: "Try it and write tested: with pass or fail.",
  bad: `circuit electrics.fan "Radiator fan"
  load: 9 A
  fuse: 15 A

hold first_run "First run"
  needs: circuits
  planned: 2026-06-05
`,
  good: `circuit electrics.fan "Radiator fan"
  load: 9 A
  fuse: 15 A

hold first_run "First run"
  needs: circuits
  planned: 2026-06-05

day 2026-05-02
  tested: electrics.fan pass
`,
  message: ({ data }) => `${data.circuit} ${LACKS[data.why]}: expected a test that passes`,
});

const LACKS = {
  never: "has not been tested",
  failed: "has failed its test",
  disturbed: "has been disturbed since it was tested",
} as const;
