import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const fittedOutOfLimit = findingRule<"fitted-out-of-limit">({
  code: "fitted-out-of-limit",
  group: "Limits and measurements",
  severity: "error",
  summary: "A part goes on although its reading is out of limits",
  why: "The log itself says that it is worn or wrong, and nothing since says otherwise.",
  remedy: "Renew or recondition the part, or measure it again if the reading was wrong.",
  bad: `part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-05-02
  removed: disc
  measured: disc thickness 8.1 mm

day 2026-05-09
  fitted: disc
`,
  good: `part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-05-02
  removed: disc
  measured: disc thickness 9.2 mm

day 2026-05-09
  fitted: disc
`,
  message: ({ data }) =>
    `${data.what} goes on with ${data.characteristic} ${say(data.reading)}; its limit is ${say(data.limit)}`,
});
