import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const serviceDue = findingRule<"service-due">({
  code: "service-due",
  group: "Lives and supply",
  severity: "warning",
  summary: "A service is due, or nobody knows when the last one was and something leans on the item",
  why: "What is serviced by the calendar wears or hardens by the calendar, used or not.",
  remedy: "Have it serviced and write serviced:, with until where the one who did it gives a date.",
  bad: `part magneto "Magneto"
  service: every 24 month

day 2024-05-02
  serviced: magneto
`,
  good: `part magneto "Magneto"
  service: every 24 month

day 2024-08-02
  serviced: magneto
`,
  message: ({ data: { what, every, serviced, due } }) => {
    if (due === undefined)
      return `when ${what} was serviced is unknown: expected a service every ${say(every)}`;
    const last = serviced === undefined ? "not serviced yet" : `last serviced on ${serviced}`;
    return `${what} is ${last}: expected a service by ${due}, every ${say(every)}`;
  },
});
