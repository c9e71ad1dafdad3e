import { findingRule } from "../rule.ts";
import { sayStage } from "./place-words.ts";

export const markedBeforeTorqued = findingRule<"marked-before-torqued">({
  code: "marked-before-torqued",
  group: "Order of things",
  severity: "warning",
  summary: "A joint is given its witness mark before it is torqued",
  why: "The mark says that the joint is done; on one that is not it hides the very thing that it is there to show.",
  remedy: "Torque the joint, then mark it.",
  bad: `part disc "Brake disc"
part hub "Hub"

joint disc_bolts "Disc to hub"
  joins: disc, hub
  torque: 24 N.m
  mark: yes

day 2026-05-02
  loosened: disc_bolts
  marked: disc_bolts
`,
  good: `part disc "Brake disc"
part hub "Hub"

joint disc_bolts "Disc to hub"
  joins: disc, hub
  torque: 24 N.m
  mark: yes

day 2026-05-02
  loosened: disc_bolts
  torqued: disc_bolts 24 N.m
  marked: disc_bolts
`,
  message: ({ data }) => `${data.joint} is ${sayStage(data.state)}: expected it torqued before it is marked`,
});
