import { findingRule } from "../rule.ts";
import { say } from "../words.ts";

export const lifeExpired = findingRule<"life-expired">({
  code: "life-expired",
  group: "Lives and supply",
  severity: "error",
  summary: "The life of an item that is on the vehicle, or may go back, is over",
  why: "Webbing, extinguishers, hoses and seals fail with age or hours, and look well while they do.",
  remedy:
    "Decide to renew it, or write changed: where its maker has given it a new date. The maker's label and the event's rules decide.",
  bad: `part safety.extinguisher "Extinguisher"
  expires: 2026-04-30
`,
  good: `part safety.extinguisher "Extinguisher"
  expires: 2028-04-30
`,
  message: ({ data }) =>
    data.is === "date"
      ? `the life of ${data.what} ended on ${data.ends}: expected it good on ${data.today}`
      : `${data.what} has run ${say(data.used)}: expected less than its life of ${say(data.amount)}`,
});
