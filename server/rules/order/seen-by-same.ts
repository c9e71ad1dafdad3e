import { findingRule } from "../rule.ts";

export const seenBySame = findingRule<"seen-by-same">({
  code: "seen-by-same",
  group: "Order of things",
  severity: "error",
  summary: "The second pair of eyes is the first",
  why: "Who did a thing sees what he meant to do. The check is worth something only from somebody else.",
  remedy: "Have somebody else look, and write who.",
  bad: `part disc "Brake disc"
part hub "Hub"

joint disc_bolts "Disc to hub"
  joins: disc, hub
  torque: 24 N.m
  second_check: yes

day 2026-05-02
  torqued: disc_bolts 24 N.m by "JR"
  seen: disc_bolts by "JR"
`,
  good: `part disc "Brake disc"
part hub "Hub"

joint disc_bolts "Disc to hub"
  joins: disc, hub
  torque: 24 N.m
  second_check: yes

day 2026-05-02
  torqued: disc_bolts 24 N.m by "JR"
  seen: disc_bolts by "KT"
`,
  message: ({ data }) => `${data.what} was done by ${data.by} and seen by ${data.by}: expected somebody else`,
});
