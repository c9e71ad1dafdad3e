import { findingRule } from "../rule.ts";
import { sayPlace } from "./place-words.ts";

export const removedTwice = findingRule<"removed-twice">({
  code: "removed-twice",
  group: "Order of things",
  severity: "warning",
  summary: "A part is taken off that is off already",
  why: "Either the part was fitted again and nobody wrote it down, or another part is meant.",
  remedy: "Write down when it went back, or name the part that came off.",
  bad: `part hub "Hub"

day 2026-05-02
  removed: hub

day 2026-05-03
  removed: hub
`,
  good: `part hub "Hub"

day 2026-05-02
  removed: hub

day 2026-05-03
  fitted: hub
  removed: hub
`,
  message: ({ data }) => `${data.what} is ${sayPlace(data.place)} already: expected a part that is on`,
});
