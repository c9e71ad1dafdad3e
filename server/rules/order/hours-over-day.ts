import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const hoursOverDay = findingRule<"hours-over-day">({
  code: "hours-over-day",
  group: "Order of things",
  severity: "error",
  summary: "More hours are booked than the day had, or a day has more than 24",
  why: "The remaining time of the jobs is reckoned from the hours booked on them, so a wrong figure moves the whole plan.",
  remedy: "Correct the hours of the day or of the work; hours of other people count where hands: says so.",
  bad: `job strip "Strip"
  takes: 8 h

day 2026-05-02 6 h
  worked: 8 h on strip
`,
  good: `job strip "Strip"
  takes: 8 h

day 2026-05-02 6 h
  worked: 6 h on strip
`,
  message: ({ data }) =>
    data.is === "too long"
      ? `the day has ${say(data.day)}: expected at most 24 h`
      : `${say(data.booked)} of work are booked${data.hands > 1 ? ` by ${data.hands} pairs of hands` : ""}: expected at most the ${say(data.day)} of the day${data.hands > 1 ? " for each" : ""}`,
});
