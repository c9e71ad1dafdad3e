import { findingRule } from "../rule.ts";
import { list } from "../words.ts";

export const inspectionMethod = findingRule<"inspection-method">({
  code: "inspection-method",
  group: "Care",
  severity: "error",
  summary: "A crack test is made by a method that cannot find a crack there",
  why: "Magnetic particles gather only on what magnetises; penetrant enters only an open crack, and blasting or paint closes it. Such a test passes whatever is there.",
  remedy:
    "Use penetrant on aluminium, magnesium, titanium, brass and their like; before penetrant, strip the face chemically or etch it.",
  source: "common practice, no source",
  bad: `part front.upright "Upright"
  material: aluminium

day 2026-05-02
  inspected: front.upright by magnetic_particle
`,
  good: `part front.upright "Upright"
  material: aluminium

day 2026-05-02
  inspected: front.upright by penetrant
`,
  grade: ({ data }) => (data.is === "face" ? "warning" : undefined),
  message: ({ data }) =>
    data.is === "material"
      ? `${list(data.what)} of ${data.material.replaceAll("_", " ")} cannot be tested by magnetic particles: expected penetrant`
      : `penetrant may find nothing on ${list(data.what)}, ${data.face} before: expected the face opened by etching or chemical stripping`,
});
