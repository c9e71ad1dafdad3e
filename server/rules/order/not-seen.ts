import { findingRule } from "../rule.ts";

export const notSeen = findingRule<"not-seen">({
  code: "not-seen",
  group: "Order of things",
  severity: "warning",
  summary: "What asks for a second pair of eyes has not been seen by one",
  why: "Who did a thing sees what he meant to do; a forgotten pin is found by somebody else, or on the road.",
  remedy: "Have somebody else look after the last torque and lock, and write `seen:` with who it was.",
  source: "common practice, no source",
  bad: `hold road "On the road"
  needs: joints
  planned: 2026-05-09

joint disc_bolts "Disc to hub"
  torque: 24 N.m
  second_check: yes

day 2026-05-02
  loosened: disc_bolts
  torqued: disc_bolts 24 N.m by "JR"
`,
  good: `hold road "On the road"
  needs: joints
  planned: 2026-05-09

joint disc_bolts "Disc to hub"
  torque: 24 N.m
  second_check: yes

day 2026-05-02
  loosened: disc_bolts
  torqued: disc_bolts 24 N.m by "JR"
  seen: disc_bolts by "KT"
`,
  message: ({ data }) => `${data.what} is done and not seen by a second pair of eyes: expected seen:`,
});
