import { factBehind } from "../fact-behind.ts";
import { findingRule } from "../rule.ts";

export const openedNotBled = findingRule<"opened-not-bled">({
  code: "opened-not-bled",
  group: "Systems and circuits",
  severity: "warning",
  summary: "A fluid system was opened and has not been filled or bled since, and something leans on it",
  why: "Air in a hydraulic line is a pedal that goes to the floor; an engine without its oil is scrap in a minute.",
  remedy:
    "Fill and bleed it by the maker's sequence and write filled: and bled:. A part that comes off, or a joint of one that is loosened, opens the system.",
  source: "common practice, no source",
  bad: `system clutch.hydraulics "Clutch hydraulics"
  bleed: yes

hold first_run "First run"
  needs: systems
  planned: 2026-06-05

day 2026-05-02
  opened: clutch.hydraulics
`,
  good: `system clutch.hydraulics "Clutch hydraulics"
  bleed: yes

hold first_run "First run"
  needs: systems
  planned: 2026-06-05

day 2026-05-02
  opened: clutch.hydraulics
  bled: clutch.hydraulics
`,
  message: ({ data }) =>
    `${data.system} was opened on ${data.opened} and ${LACKS[data.lacks]}${data.lacks === "fluid" && data.asksBleeding ? ", and then bled" : ""}`,
  // Behind the filling: whatever opened the system again since would have made that count for nothing, too.
  fixes: ({ data, subject }, { standing }) => {
    const filled = subject && standing.systems.get(subject)?.filled;
    return data.lacks === "bleeding" && filled !== undefined
      ? factBehind(filled.place, `bled: ${data.system}`)
      : [];
  },
});

const LACKS = {
  fluid: "not filled since: expected it filled",
  bleeding: "not bled since: expected it bled",
} as const;
