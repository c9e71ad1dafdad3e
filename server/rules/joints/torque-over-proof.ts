import { findingRule } from "../rule.ts";
import { say, sayPercent } from "../words.ts";

export const torqueOverProof = findingRule<"torque-over-proof">({
  code: "torque-over-proof",
  group: "Joints",
  severity: "warning",
  summary: "The torque loads the bolt to its proof load or over",
  why: "At the top of the torque and the lowest friction of that finish the bolt is at the end of its elastic stretch. An estimate: preload scatters by ± 25 to 35 % when tightening by torque.",
  remedy:
    "A maker's figure comes first and is not contradicted: check that friction, class and thread are as written, and that the figure is for dry or for oiled threads. A figure of your own: lower it.",
  source:
    "T = K F d, Shigley, Mechanical Engineering Design: 75 % of proof load for a joint that is opened again, 90 % for a permanent one",
  bad: `joint bracket "Bracket to frame"
  bolt: 2 x M8x1.25x30 class 8.8
  torque: 30 N.m ± 10 %
  friction: zinc
`,
  good: `joint bracket "Bracket to frame"
  bolt: 2 x M8x1.25x30 class 8.8
  torque: 24 N.m ± 10 %
  friction: zinc
`,
  grade: ({ data }) => (data.over ? "error" : undefined),
  message: ({ data }) =>
    `${data.joint}: ${say(data.torque)} comes to ${sayPercent(data.percent)} of the proof load of ${data.strength} (${data.friction}), an estimate: expected under 90 %; if it is the maker's figure, check the friction`,
});
