import { waiverRule } from "../rule.ts";

export const unusedWaiver = waiverRule({
  code: "unused-waiver",
  group: "Notation",
  severity: "hint",
  summary: "A waiver on a line that brings no such complaint",
  why: "It says that something is wrong here and accepted, which is not so, and it would silence the complaint if it came back.",
  remedy: "Take the waiver out, or correct its code.",
  bad: `part hub "Hub"
  limit: bore 54.00..54.05 mm

day 2026-05-02
  measured: hub bore 54.02 mm  # waived over-limit: skimmed since
`,
  good: `part hub "Hub"
  limit: bore 54.00..54.05 mm

day 2026-05-02
  measured: hub bore 54.02 mm
`,
  message: ({ code }, known) =>
    known
      ? `this waiver is not needed: expected ${code} on this line, and nothing brings it`
      : `this waiver waives nothing: there is no complaint called ${code}`,
});
