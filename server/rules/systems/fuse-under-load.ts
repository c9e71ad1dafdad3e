import { floatIn } from "../../quantities/quantity.ts";
import { nextFuse } from "../../trade/electrics.ts";
import { findingRule } from "../rule.ts";
import { say, sayShare } from "../words.ts";

export const fuseUnderLoad = findingRule<"fuse-under-load">({
  code: "fuse-under-load",
  group: "Systems and circuits",
  severity: "error",
  summary: "A fuse carries more than it should for long, or more than it bears",
  why: "A fuse near its rating tires and blows on a warm night; one under its load blows at once, and is then replaced by something worse.",
  remedy:
    "Fit the next fuse that the wire still bears, or split the circuit. Inrush and the stall of motors are not judged: leave room for them.",
  source: "80 % rule, common practice, no source; ratings of ISO 8820-3, from memory",
  bad: `circuit electrics.fan "Radiator fan"
  load: 17 A
  fuse: 15 A
`,
  good: `circuit electrics.fan "Radiator fan"
  load: 11 A
  fuse: 15 A
`,
  grade: ({ data }) => (data.share > 1 ? undefined : "warning"),
  message: ({ data: { fuse, load, share, most } }) => {
    const next = nextFuse(floatIn(load, "A") / most);
    const needed = next === undefined ? "no blade fuse is that large" : `the next is ${next} A`;
    const found =
      share > 1
        ? `is over its fuse of ${say(fuse)}`
        : `is ${sayShare(share, most)} of its fuse of ${say(fuse)}`;
    return `the load of ${say(load)} ${found}: expected at most ${sayShare(most)}, ${needed}; inrush and stall are not judged`;
  },
});
