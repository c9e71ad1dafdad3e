import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const fluidChangeDue = findingRule<"fluid-change-due">({
  code: "fluid-change-due",
  group: "Systems and circuits",
  severity: "warning",
  summary: "A fluid is older than its change interval, or of unknown age in a system that is leant on",
  why: "Glycol brake fluid takes up water and boils sooner each year; old oil and coolant stop protecting.",
  remedy: "Drain and fill it, and write drained: and filled:. Topping up makes old fluid no younger.",
  source: "common practice, no source",
  bad: `system gearbox.oil "Gearbox oil"
  capacity: 1.1 l
  change: every 24 month

day 2024-05-02
  filled: gearbox.oil 1.1 l
`,
  good: `system gearbox.oil "Gearbox oil"
  capacity: 1.1 l
  change: every 24 month

day 2024-08-02
  filled: gearbox.oil 1.1 l
`,
  message: ({ data: { system, fluid, every, filled, due } }) => {
    const named = fluid === undefined ? system : `${system} (${fluid})`;
    return filled === undefined || due === undefined
      ? `when the fluid of ${named} was changed is unknown: expected a change every ${say(every)}`
      : `the fluid of ${named} is of ${filled}: expected a change by ${due}, every ${say(every)}`;
  },
});
