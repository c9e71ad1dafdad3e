import { findingRule } from "../rule.ts";

export const secondVehicle = findingRule<"second-vehicle">({
  code: "second-vehicle",
  group: "Notation",
  severity: "error",
  summary: "A second vehicle in one build",
  why: "A folder tree holds one build; the records of the second vehicle count for nothing.",
  remedy: "Put the second vehicle into a folder of its own, or delete its block.",
  bad: `vehicle "Roadster"

vehicle "Trials machine"
`,
  good: `vehicle "Roadster"
`,
  message: ({ data }) => `${data.name} is a second vehicle beside ${data.first}; expected one in a build`,
});
