import { CONDITIONS } from "../../../grammar/vocabulary/words.ts";
import { findingRule } from "../rule.ts";

export const fittedCondemned = findingRule<"fitted-condemned">({
  code: "fitted-condemned",
  group: "Order of things",
  severity: "error",
  summary: "A part goes back that was found unfit, or that was to be renewed or repaired",
  why: "Nothing in the log says that what was wrong with it has been put right.",
  remedy:
    "Write what was done: repaired:, reconditioned: with its kit, back:, or a later decided: … reuse that says why. On a safety-critical part outside work is not enough: inspect or measure it again; after a crack, a bend or a stretch it takes a crack test and a second pair of eyes.",
  bad: `part arm "Steering arm"

day 2026-05-02
  removed: arm
  found: arm bent

day 2026-05-09
  fitted: arm
`,
  good: `part arm "Steering arm"

day 2026-05-02
  removed: arm
  found: arm bent

day 2026-05-09
  repaired: arm
  fitted: arm
`,
  message: ({ data }) =>
    `${data.what} goes back although it was ${isCondition(data.why) ? "found" : "decided"} ${data.why}: expected it ${MENDS[data.why] ?? "repaired or renewed"} first`,
});

/** What settles a decision; a finding is settled by any of them. */
const MENDS: Readonly<Record<string, string>> = {
  recondition: "reconditioned with its kit in hand, or back",
  repair: "repaired, or back",
  renew: "to be a new one",
  make: "to be the one that was made",
  scrap: "to be another one",
};

function isCondition(why: string): boolean {
  return (CONDITIONS as readonly string[]).includes(why);
}
