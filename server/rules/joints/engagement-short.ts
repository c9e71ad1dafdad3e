import type { FindingData } from "../../build/finding-data.ts";
import { findingRule } from "../rule.ts";
import { say, sayNumber } from "../words.ts";

export const engagementShort = findingRule<"engagement-short">({
  code: "engagement-short",
  group: "Joints",
  severity: "error",
  summary: "A hole or nut has less thread than the bolt needs",
  why: "However long the bolt, no more thread can hold it than the hole has or the nut is high: it strips before it clamps. Where only a longer bolt is wanted the complaint is bolt-too-short.",
  remedy:
    "Tap deeper, fit a thread insert, or use a full nut. Plastic, timber and composite always need an insert. A nut between half and eight tenths of its diameter bears less than its class: a warning.",
  source: "engagement: common practice, no source; heights of nuts: ISO 898-2 and ISO 4032, from memory",
  bad: `joint housing "Housing to case"
  bolt: 4 x M8x1.25x30 class 8.8
  nut: tapped 12 mm in aluminium
  grip: 20 mm
  torque: 20 N.m
  friction: zinc
`,
  good: `joint housing "Housing to case"
  bolt: 4 x M8x1.25x40 class 8.8
  nut: tapped 22 mm in aluminium
  grip: 20 mm
  torque: 20 N.m
  friction: zinc
`,
  grade: ({ data }) => (data.is === "nut" && data.thin ? "warning" : undefined),
  message: ({ data }) => `${data.joint}: ${SAY[data.is](data as never)}`,
});

type Data = FindingData["engagement-short"];

const SAY: { readonly [K in Data["is"]]: (data: Data & { is: K }) => string } = {
  hole: ({ depth, needed, why }) => `the hole has ${say(depth)} of thread: expected ${say(needed)} (${why})`,
  nut: ({ height, needed, share, thin }) =>
    `the nut is ${say(height)} high, ${sayNumber(share)} d: expected at least ${say(needed)}${thin ? " for its class" : ""}`,
  insert: ({ material }) => `the thread is cut in ${material}: expected a thread insert`,
};
