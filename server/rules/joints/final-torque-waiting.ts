import type { FindingData } from "../../build/finding-data.ts";
import { findingRule } from "../rule.ts";

export const finalTorqueWaiting = findingRule<"final-torque-waiting">({
  code: "final-torque-waiting",
  group: "Joints",
  severity: "information",
  summary: "A joint is not finally tightened yet",
  why: "Waiting for its job or hold point that is as it should be, and only said so that it is not forgotten. Once the wait is over and something leans on the joint, or it runs, it is a warning: this is how wheels and arms come off.",
  remedy: "Torque it, lock it and mark it as it asks, and write that down.",
  source: "common practice, no source",
  bad: `job alignment "Alignment"

joint arm_pivots "Arm to frame"
  torque: 60 N.m
  after: alignment

day 2026-05-02
  loosened: arm_pivots
  nipped: arm_pivots
`,
  good: `job alignment "Alignment"

joint arm_pivots "Arm to frame"
  torque: 60 N.m
  after: alignment

day 2026-05-02
  loosened: arm_pivots
  nipped: arm_pivots

day 2026-05-09
  started: alignment
  torqued: arm_pivots 60 N.m
`,
  grade: ({ data }) => (data.due ? "warning" : undefined),
  message: ({ data }) => `${data.joint} ${STATES[data.state]}${sayWait(data)}`,
});

type Data = FindingData["final-torque-waiting"];

const STATES: Readonly<Record<Data["state"], string>> = {
  open: "is open",
  nipped: "is only nipped",
  stage: "is at a stage of its torque",
  moved: "has moved when it was checked",
  unset: "is not set: its measurement was not taken since it was open",
};

function sayWait({ awaited, due, state }: Data): string {
  const wanted = state === "unset" ? "set" : "torqued";
  if (awaited === undefined) return `: expected it ${wanted} by now`;
  const until = awaited.kind === "job" ? `${awaited.name} is started` : `${awaited.name} is released`;
  return due ? `, waits until ${until}, and has run: expected it ${wanted}` : ` until ${until}`;
}
