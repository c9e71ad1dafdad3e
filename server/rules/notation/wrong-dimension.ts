import { findingRule } from "../rule.ts";
import { foundInstead } from "./text-fault-words.ts";

export const wrongDimension = findingRule<"wrong-dimension">({
  code: "wrong-dimension",
  group: "Notation",
  severity: "error",
  summary: "A value measures another thing than its place asks for",
  why: "A torque cannot answer a limit in millimetres; most often the unit was misspelt, as in nm for N.m.",
  remedy: "Correct the unit, or the name of what was measured.",
  source: "SI brochure, 9th edition: unit symbols are case-sensitive, the newton metre is N m or N·m",
  bad: `joint disc_bolts "Disc bolts"
  torque: 24 nm
`,
  good: `joint disc_bolts "Disc bolts"
  torque: 24 N.m
`,
  message: ({ data }) => data.reason ?? foundInstead(data),
});
