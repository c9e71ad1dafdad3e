import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const notProved = findingRule<"not-proved">({
  code: "not-proved",
  group: "Systems and circuits",
  severity: "warning",
  summary: "A system that asks for a pressure test was opened and has not been proved since",
  why: "A joint that weeps under a foot's worth of pressure is found on the bench with a gauge, or on the road without one.",
  remedy:
    "Test it with liquid, never air, at the pressure and for the time that it asks for, and write proved:.",
  source: "common practice, no source",
  bad: `system clutch.hydraulics "Clutch hydraulics"
  bleed: yes
  pressure_test: 40 bar for 2 min

hold first_run "First run"
  needs: systems
  planned: 2026-06-05

day 2026-05-02
  opened: clutch.hydraulics
  bled: clutch.hydraulics
`,
  good: `system clutch.hydraulics "Clutch hydraulics"
  bleed: yes
  pressure_test: 40 bar for 2 min

hold first_run "First run"
  needs: systems
  planned: 2026-06-05

day 2026-05-02
  opened: clutch.hydraulics
  bled: clutch.hydraulics
  proved: clutch.hydraulics at 40 bar for 2 min
`,
  message: ({ data: { system, opened, pressure, time } }) =>
    `${system} was opened on ${opened} and not proved since: expected ${say(pressure)}${time === undefined ? "" : ` for ${say(time)}`}`,
});
