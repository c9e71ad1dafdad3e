import { findingRule } from "../rule.ts";
import { say, sayPercent } from "../words.ts";

export const torqueLowPreload = findingRule<"torque-low-preload">({
  code: "torque-low-preload",
  group: "Joints",
  severity: "warning",
  summary: "The torque loads the bolt to less than half its proof load",
  why: "A joint with little clamping slips and works loose. A warning where even the top of the torque at the lowest friction comes to less than half; an information where only the aim does. An estimate: gaskets and soft parts may well ask for less.",
  remedy:
    "A maker's figure comes first. Else check thread, class and friction, and that the torque is not one of a smaller bolt.",
  source: "half of proof load: common practice, no source; 75 %: Shigley, Mechanical Engineering Design",
  bad: `joint bracket "Bracket to frame"
  bolt: 2 x M8x1.25x30 class 8.8
  torque: 10 N.m ± 10 %
  friction: zinc
`,
  good: `joint bracket "Bracket to frame"
  bolt: 2 x M8x1.25x30 class 8.8
  torque: 24 N.m ± 10 %
  friction: zinc
`,
  grade: ({ data }) => (data.atMost ? undefined : "information"),
  message: ({ data }) =>
    `${data.joint}: ${data.atMost ? `${say(data.torque)} comes to at most` : "its torque comes to about"} ${sayPercent(data.percent)} of the proof load of ${data.strength} (${data.friction}), an estimate: expected at least 50 %`,
});
