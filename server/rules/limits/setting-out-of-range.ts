import { findingRule } from "../rule.ts";
import { say, sayIn, sayReadings } from "../words.ts";

export const settingOutOfRange = findingRule<"setting-out-of-range">({
  code: "setting-out-of-range",
  group: "Limits and measurements",
  severity: "warning",
  summary: "A setting is out of its tolerance",
  why: "The vehicle was set up, or found, otherwise than it is meant to be.",
  remedy:
    "Adjust it, and write down what it is set to. If it is meant so, change the setting: changed: … setting.",
  bad: `assembly front.left "Left front corner"
  setting: camber -1.5 deg ± 0.25 deg

day 2026-05-02
  set: front.left camber -0.5 deg
`,
  good: `assembly front.left "Left front corner"
  setting: camber -1.5 deg ± 0.25 deg

day 2026-05-02
  set: front.left camber -1.4 deg
`,
  message: ({ data }) =>
    `${data.characteristic} ${say(data.reading)} is ${data.side === "upper" ? "over" : "under"} ${say(data.limit)}, the end of its tolerance, by ${sayIn(data.by, data.reading)}${sayReadings(data)}`,
});
