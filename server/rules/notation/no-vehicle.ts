import { findingRule } from "../rule.ts";

export const noVehicle = findingRule<"no-vehicle">({
  code: "no-vehicle",
  group: "Notation",
  severity: "information",
  summary: "The files belong to no vehicle",
  why: "Budget, currency, the working week and what is known of the past stand in the vehicle's block; without it the usual figures are taken.",
  remedy: 'Write a block vehicle "Name" at the head of one file.',
  bad: `part hub "Hub"
`,
  good: `vehicle "Roadster"

part hub "Hub"
`,
  message: () => "no vehicle block in this folder or above it: expected one",
});
