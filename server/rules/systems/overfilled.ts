import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const overfilled = findingRule<"overfilled">({
  code: "overfilled",
  group: "Systems and circuits",
  severity: "warning",
  summary: "More fluid is filled in at once than the system holds",
  why: "Either it leaks or foams over, or the capacity or the volume is wrong and so is everything reckoned from it.",
  remedy: "Correct the volume or the capacity:, or take the surplus out.",
  bad: `system gearbox.oil "Gearbox oil"
  capacity: 1.1 l

day 2026-05-02
  filled: gearbox.oil 1.5 l
`,
  good: `system gearbox.oil "Gearbox oil"
  capacity: 1.1 l

day 2026-05-02
  filled: gearbox.oil 1.1 l
`,
  message: ({ data }) =>
    `${say(data.volume)} is more than ${data.system} holds: expected at most ${say(data.capacity)}`,
});
