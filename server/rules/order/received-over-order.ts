import { findingRule } from "../rule.ts";

export const receivedOverOrder = findingRule<"received-over-order">({
  code: "received-over-order",
  group: "Order of things",
  severity: "warning",
  summary: "More is received than is on order",
  why: "Either an order was not written down, with what it cost, or the count is wrong.",
  remedy: "Write the order down, or correct the number; use bought: for what comes over the counter.",
  bad: `part pads "Brake pads"
  price: 34.50 GBP

day 2026-05-02
  ordered: 1 x pads at 34.50 GBP

day 2026-05-09
  received: 2 x pads
`,
  good: `part pads "Brake pads"
  price: 34.50 GBP

day 2026-05-02
  ordered: 2 x pads at 34.50 GBP

day 2026-05-09
  received: 2 x pads
`,
  message: ({ data }) => `${data.received} x ${data.what} received; ${data.open} on order`,
});
