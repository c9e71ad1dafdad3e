import type { FindingData } from "../../build/finding-data.ts";
import { findingRule } from "../rule.ts";

export const torqueNotStated = findingRule<"torque-not-stated">({
  code: "torque-not-stated",
  group: "Joints",
  severity: "warning",
  summary: "A joint has no torque that it can be held against",
  why: "Without a figure nothing shows that it was tightened as it must be. A torque from the strength class is an estimate: on safety-critical joints a warning, for pivots, bearings, banjos, soft materials, stainless and titanium an error, since they are not tightened to the bolt's strength.",
  remedy: "Write the maker's torque, or `by hand` or `set_by` where that is what is meant.",
  source: "common practice, no source",
  bad: `joint bracket "Bracket to frame"
  bolt: 2 x M8x1.25x30 class 8.8
`,
  good: `joint bracket "Bracket to frame"
  bolt: 2 x M8x1.25x30 class 8.8
  torque: 24 N.m
  friction: zinc
`,
  grade: ({ data }) => (data.is === "from class" && data.doubt.is !== "critical" ? "error" : undefined),
  message: ({ data }) => `${data.joint}: ${SAY[data.is](data as never)}`,
});

type Data = FindingData["torque-not-stated"];
type Doubt = (Data & { is: "from class" })["doubt"];

const SAY: { readonly [K in Data["is"]]: (data: Data & { is: K }) => string } = {
  nothing: () => "no torque is stated: expected torque: or set_by:",
  "from class": ({ doubt }) => `torque from class, and ${sayDoubt(doubt)}: expected the maker's figure`,
  "not computed": ({ missing }) =>
    `torque from class cannot be computed without ${MISSING[missing]}: expected it, or the maker's figure`,
};

const MISSING = { bolt: "a bolt", class: "its class", friction: "a figure for its friction" } as const;

function sayDoubt(doubt: Doubt): string {
  switch (doubt.is) {
    case "critical":
      return "its failure can hurt";
    case "stainless":
    case "titanium":
      return `it has ${doubt.is} in it`;
    case "soft thread":
      return `its thread is cut in ${doubt.material.replace("_", " ")}`;
    case "soft part":
      return `it clamps ${doubt.material.replace("_", " ")}`;
    case "pivot":
    case "bearing":
    case "banjo":
      return `it is a ${doubt.is}`;
  }
}
