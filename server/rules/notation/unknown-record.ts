import { findingRule } from "../rule.ts";
import { foundInstead } from "./text-fault-words.ts";

export const unknownRecord = findingRule<"unknown-record">({
  code: "unknown-record",
  group: "Notation",
  severity: "error",
  summary: "A line has the form of a record, but its word is not one of the notation",
  why: "A misspelt record would otherwise be taken for prose, and what it says would be lost without a sound.",
  remedy: "Correct the word, or begin the line with | where it is meant as prose.",
  bad: `part hub "Hub"

day 2026-05-02
  remvoed: hub
`,
  good: `part hub "Hub"

day 2026-05-02
  removed: hub
`,
  message: ({ data }) => {
    if (data.reason !== undefined) return foundInstead(data);
    const { found, expected } = data;
    return expected === "" ? `${found} is no record word` : `${found} is no record word; ${expected} is`;
  },
});
