import { findingRule } from "../rule.ts";
import { sayPlace } from "./place-words.ts";

export const torquedBeforeFitted = findingRule<"torqued-before-fitted">({
  code: "torqued-before-fitted",
  group: "Order of things",
  severity: "error",
  summary: "A joint is torqued while a part of it is off",
  why: "What was tightened cannot have been this joint as it will be; when the part goes on, it has to be undone again.",
  remedy: "Write fitted: for the part before the joint is torqued, or name the joint that is meant.",
  bad: `part disc "Brake disc"
part hub "Hub"

joint disc_bolts "Disc to hub"
  joins: disc, hub
  torque: 24 N.m

day 2026-05-02
  removed: disc
  torqued: disc_bolts 24 N.m
`,
  good: `part disc "Brake disc"
part hub "Hub"

joint disc_bolts "Disc to hub"
  joins: disc, hub
  torque: 24 N.m

day 2026-05-02
  removed: disc
  fitted: disc
  torqued: disc_bolts 24 N.m
`,
  message: ({ data }) => `${data.joint} holds ${data.part}, which is ${sayPlace(data.place)}: expected it on`,
});
