import { findingRule } from "../rule.ts";
import { list } from "../words.ts";
import { listOpen } from "./open-words.ts";

export const releaseLapsed = findingRule<"release-lapsed">({
  code: "release-lapsed",
  group: "Order of things",
  severity: "warning",
  summary: "Something that a released hold point needs is open again, so its release has lapsed",
  why: "The release said that everything was closed; what is opened later was not part of it.",
  remedy: "Close it again, and release the hold point anew.",
  bad: `part seat "Seat"

hold first_run "First run"
  needs: parts

day 2026-05-02
  released: first_run

day 2026-05-09
  removed: seat
`,
  good: `part seat "Seat"

hold first_run "First run"
  needs: parts

day 2026-05-02
  removed: seat

day 2026-05-09
  fitted: seat
  released: first_run
`,
  message: ({ data: { holds, open } }) =>
    `this takes back the release of ${list(holds)}, open again: ${listOpen(open)}`,
});
