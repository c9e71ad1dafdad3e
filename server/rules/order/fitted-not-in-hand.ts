import { findingRule } from "../rule.ts";

export const fittedNotInHand = findingRule<"fitted-not-in-hand">({
  code: "fitted-not-in-hand",
  group: "Order of things",
  severity: "error",
  summary: "A new part is fitted that nobody has received, bought or made",
  why: "A part that was to be renewed is on the vehicle again, and nothing says that a new one was ever there: the old one may have gone back.",
  remedy:
    "Write received:, bought: or made: for the new part; or, if the old one went back after all, decide reuse and say why.",
  bad: `part hose "Brake hose"

day 2026-05-02
  removed: hose
  decided: hose renew

day 2026-05-09
  fitted: hose
`,
  good: `part hose "Brake hose"
  price: 16.20 GBP

day 2026-05-02
  removed: hose
  decided: hose renew

day 2026-05-09
  bought: 1 x hose at 16.20 GBP
  fitted: hose
`,
  message: ({ data }) =>
    `${data.what} needs ${data.needed} new${data.decision === "" ? "" : ` (decided ${data.decision})`}; ${data.inHand === 0 ? "none is" : `${data.inHand} of them`} in hand`,
});
