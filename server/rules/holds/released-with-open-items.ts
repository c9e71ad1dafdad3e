import { findingRule } from "../rule.ts";
import { listOpen } from "./open-words.ts";

export const releasedWithOpenItems = findingRule<"released-with-open-items">({
  code: "released-with-open-items",
  group: "Order of things",
  severity: "error",
  summary: "A hold point is released while something that it needs is open",
  why: "The release is refused: the hold point stays shut, and everything behind it is stopped.",
  remedy:
    "See to each open item and release the hold point again. A snag that may wait is conceded until a later hold point. What the log shows closed does not prove the vehicle safe; inspection decides.",
  bad: `part seat "Seat"

hold first_run "First run"
  needs: parts

day 2026-05-02
  removed: seat
  released: first_run
`,
  good: `part seat "Seat"

hold first_run "First run"
  needs: parts

day 2026-05-02
  removed: seat
  fitted: seat
  released: first_run
`,
  message: ({ data: { hold, title, open } }) =>
    `${title === undefined ? hold : `${hold} (${title})`} stays shut with ${open.length} ${open.length === 1 ? "item" : "items"} open: ${listOpen(open)}`,
});
