import type { FindingData } from "../../build/finding-data.ts";
import type { Limits } from "../../quantities/limits.ts";
import { findingRule } from "../rule.ts";
import { say, sayIn, sayUncertainty } from "../words.ts";

export const torqueOutside = findingRule<"torque-outside">({
  code: "torque-outside",
  group: "Joints",
  severity: "error",
  summary: "A joint is tightened to another torque or angle than it asks for",
  why: "Too little and it works loose, too much and the bolt has been stretched. Where only the wrench's own uncertainty reaches past the limit it is a warning.",
  remedy:
    "Loosen the joint and torque it again; replace bolts that were taken too far. Mind the scale of the wrench.",
  source: "a torque without a tolerance: ± 10 %, common practice, no source",
  bad: `joint caliper_bolts "Caliper to upright"
  torque: 34 N.m ± 10 %

day 2026-05-02
  torqued: caliper_bolts 34 lbf.ft
`,
  good: `joint caliper_bolts "Caliper to upright"
  torque: 34 N.m ± 10 %

day 2026-05-02
  torqued: caliper_bolts 34 N.m
`,
  grade: ({ data }) => (data.fault.is === "doubtful" ? "warning" : undefined),
  message: ({ data }) => `${data.joint}: ${SAY[data.fault.is](data.fault as never)}`,
});

type Fault = FindingData["torque-outside"]["fault"];

const SAY: { readonly [K in Fault["is"]]: (fault: Fault & { is: K }) => string } = {
  outside: ({ of, reading, limits, limit, side, by }) => {
    const converted = reading.unit === limit.unit ? "" : ` (${sayIn(reading, limit)})`;
    const way = side === "upper" ? "over" : "under";
    return `${of} ${say(reading)}${converted} is ${way} ${say(limit)} by ${sayIn(by, reading)}: expected ${sayLimits(limits)}`;
  },
  doubtful: ({ reading, uncertainty, limit, side }) =>
    `torque ${say(reading)}${sayUncertainty({ uncertainty })} reaches ${side === "upper" ? "over" : "under"} the limit of ${say(limit)}: the wrench cannot prove it`,
  "angle missing": ({ angle }) => `the torque is written without the angle: expected then ${say(angle)}`,
  "angle unasked": ({ angle }) => `turned ${say(angle)} behind the torque: expected the torque alone`,
};

function sayLimits({ lower, upper }: Limits): string {
  if (lower !== undefined && upper !== undefined) return `${say(lower)} to ${say(upper)}`;
  return lower !== undefined ? `at least ${say(lower)}` : upper !== undefined ? `at most ${say(upper)}` : "";
}
