import type { Finding } from "../../build/finding.ts";
import { findingRule } from "../rule.ts";
import { list, say } from "../words.ts";

export const provedWhileOpen = findingRule<"proved-while-open">({
  code: "proved-while-open",
  group: "Systems and circuits",
  severity: "error",
  summary: "A system is said to be proved when the proof cannot be one",
  why: "A proof of an open system, over a joint that is not secured, or below the pressure or time that is asked for shows nothing, and would be trusted like a real one.",
  remedy:
    "Close what is open, then test with liquid at the pressure and for the time that pressure_test: asks for, and write it down again.",
  bad: `system clutch.hydraulics "Clutch hydraulics"
  pressure_test: 40 bar for 2 min

day 2026-05-02
  proved: clutch.hydraulics at 30 bar for 2 min
`,
  good: `system clutch.hydraulics "Clutch hydraulics"
  pressure_test: 40 bar for 2 min

day 2026-05-02
  proved: clutch.hydraulics at 40 bar for 2 min
`,
  message: ({ data }) => `this proof of ${data.system} is none: ${doubt(data)}`,
});

function doubt(data: Finding<"proved-while-open">["data"]): string {
  switch (data.why) {
    case "open":
      return "it has been neither filled nor bled since it was opened";
    case "joint":
      return `${data.joint} is not secured (${list(data.lacks)})`;
    case "pressure":
      return `${say(data.proved)} where ${say(data.asked)} is asked for`;
    case "time":
      return `it was held for ${say(data.proved)} where ${say(data.asked)} is asked for`;
  }
}
