import { findingRule } from "../rule.ts";

export const torquedTooSoon = findingRule<"torqued-too-soon">({
  code: "torqued-too-soon",
  group: "Joints",
  severity: "warning",
  summary: "A joint is finally tightened before what it waits for",
  why: "Arms that are torqued in the air twist their bushes as soon as the vehicle stands on its wheels; other joints wait for an alignment or a test in the same way.",
  remedy:
    "Nip it for now, and torque it when the job has been started or the hold point released. Once it is too late: loosen it, and torque it again in its turn.",
  source: "common practice, no source",
  bad: `job alignment "Alignment"

joint arm_pivots "Arm to frame"
  torque: 60 N.m
  after: alignment

day 2026-05-02
  torqued: arm_pivots 60 N.m
`,
  good: `job alignment "Alignment"

joint arm_pivots "Arm to frame"
  torque: 60 N.m
  after: alignment

day 2026-05-02
  started: alignment
  torqued: arm_pivots 60 N.m
`,
  message: ({ data: { joint, awaited } }) =>
    awaited.kind === "job"
      ? `${joint} is finally tightened before the job ${awaited.name} is started: expected it only nipped`
      : `${joint} is finally tightened before ${awaited.name} is released: expected it only nipped`,
});
