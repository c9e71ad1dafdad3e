import { findingRule } from "../rule.ts";

export const mixedThread = findingRule<"mixed-thread">({
  code: "mixed-thread",
  group: "Joints",
  severity: "error",
  summary: "Bolt and nut have different threads",
  why: "Threads of nearly one size start, bind or hang on by their tips, and feel tight while they hold nothing.",
  remedy: "Measure both with a thread gauge, and write down or fit what belongs together.",
  bad: `joint bracket "Bracket to frame"
  bolt: 2 x 5/16-18 UNC x 1 in
  nut: plain 5/16 BSW
  torque: 15 lbf.ft
`,
  good: `joint bracket "Bracket to frame"
  bolt: 2 x 5/16-18 UNC x 1 in
  nut: plain 5/16-18 UNC
  torque: 15 lbf.ft
`,
  message: ({ data }) => `${data.joint}: bolt ${data.bolt} and nut ${data.nut}: expected one thread for both`,
});
