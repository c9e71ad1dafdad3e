import { findingRule } from "../rule.ts";
import { list } from "../words.ts";

export const clearedUnknownSnag = findingRule<"cleared-unknown-snag">({
  code: "cleared-unknown-snag",
  group: "Order of things",
  severity: "error",
  summary: "A snag is cleared or conceded that nobody has noted, or that is cleared already",
  why: "The defect that was meant stays open under its own name, and holds up what it should no longer.",
  remedy: "Write the name as it stands behind snag:.",
  bad: `assembly body "Body"

day 2026-05-02
  snag: door_gap on body "3 mm at the top"
  cleared: door
`,
  good: `assembly body "Body"

day 2026-05-02
  snag: door_gap on body "3 mm at the top"
  cleared: door_gap
`,
  message: ({ data: { word, name, known, clearedBefore } }) => {
    if (clearedBefore !== undefined) return `the snag ${name} was cleared on ${clearedBefore} already`;
    const expected = known.length === 0 ? "none is open" : `expected ${list(known, "or")}`;
    return `no snag ${name} was noted before it is ${word}: ${expected}`;
  },
});
