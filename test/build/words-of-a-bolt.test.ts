/** A bolt in the words of its record, and what a torque makes of it. */
import { expect, it } from "vitest";
import { jointBolt } from "../../server/build/joint-bolt.ts";
import { tighteningOf } from "../../server/build/joint-friction.ts";
import { buildOf, nodeAt } from "./marked-build.ts";

const bolted = (...records: readonly string[]) => {
  const build = buildOf(`joint flange "Flange"\n${records.map((record) => `  ${record}\n`).join("")}`);
  return { standing: build.standing, joint: nodeAt(build, "flange") };
};

it.each([
  ["bolt: 4 x M8x1.25x30 class 8.8", "4 x M8x30 class 8.8"],
  ["bolt: 1 x M8x1.25x30", "1 x M8x30"],
  ["stud: 6 x 3/8-24 UNF", "6 x 3/8-24 UNF"],
])("%s reads %s", (record, words) => {
  const { standing, joint } = bolted(record);
  expect(jointBolt(standing, joint)).toBe(words);
});

it("a joint without a bolt has no words for it, and no torque makes anything of it", () => {
  const { standing, joint } = bolted("torque: 24 N.m");
  expect(jointBolt(standing, joint)).toBeUndefined();
  expect(tighteningOf(standing, joint)).toBeUndefined();
});

it("a bolt counts before a stud", () => {
  const { standing, joint } = bolted("stud: 6 x M6x1x20", "bolt: 4 x M8x1.25x30");
  expect(jointBolt(standing, joint)).toBe("4 x M8x30");
});

it.each(["thread 0.12 head 0.14", "oiled"])(
  "with friction %s torque and preload are each the other's inverse, and less friction makes more of a torque",
  (friction) => {
    const { standing, joint } = bolted("bolt: 4 x M8x1.25x30 class 8.8", `friction: ${friction}`);
    const tightening = tighteningOf(standing, joint);
    if (tightening === undefined) throw new Error("no friction");
    const { preload, torqueFor, highest, lowest, assumed } = tightening;
    expect(torqueFor(preload(24))).toBeCloseTo(24, 9);
    expect(highest(24)).toBeGreaterThanOrEqual(preload(24));
    expect(lowest(24)).toBeLessThanOrEqual(preload(24));
    expect(assumed).toBe(false);
  },
);

it("a joint that states no friction is taken as dry", () => {
  const { standing, joint } = bolted("bolt: 4 x M8x1.25x30 class 8.8");
  const [stated, taken] = [
    bolted("bolt: 4 x M8x1.25x30 class 8.8", "friction: dry"),
    { standing, joint },
  ].map((each) => tighteningOf(each.standing, each.joint));
  expect(taken?.assumed).toBe(true);
  expect(taken?.preload(24)).toBe(stated?.preload(24));
});
