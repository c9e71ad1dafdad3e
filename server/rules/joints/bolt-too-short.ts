import type { FindingData } from "../../build/finding-data.ts";
import { findingRule } from "../rule.ts";
import { say, sayNumber } from "../words.ts";

export const boltTooShort = findingRule<"bolt-too-short">({
  code: "bolt-too-short",
  group: "Joints",
  severity: "error",
  summary: "A bolt is too short for its nut or its hole",
  why: "Threads that are not there carry nothing: the nut strips, or the hole does, long before the bolt has its load. A longer bolt mends it; where the hole itself is too shallow the complaint is engagement-short.",
  remedy:
    "Fit a longer bolt, or take out a washer that need not be there. State grip, washers and the nut's height if they are not as written.",
  source:
    "past the nut: common practice, FAA AC 43.13-1B asks at least one thread; in a hole: common practice, no source",
  bad: `joint bracket "Bracket to frame"
  bolt: 2 x M8x1.25x25 class 8.8
  nut: plain M8x1.25 class 8 height 6.8 mm
  washers: 2 x 1.6 mm
  grip: 14 mm
  torque: 24 N.m
  friction: zinc
`,
  good: `joint bracket "Bracket to frame"
  bolt: 2 x M8x1.25x30 class 8.8
  nut: plain M8x1.25 class 8 height 6.8 mm
  washers: 2 x 1.6 mm
  grip: 14 mm
  torque: 24 N.m
  friction: zinc
`,
  message: ({ data }) => (data.into === "nut" ? pastNut(data) : intoHole(data)),
});

type Data = FindingData["bolt-too-short"];

function pastNut(data: Data & { into: "nut" }): string {
  const { joint, past, pitches, needed, neededPitches, heightStated, atMost } = data;
  const expected = `expected at least ${sayNumber(neededPitches)} pitches past the nut, ${say(needed)}`;
  const height = heightStated ? "" : "; the nut is taken as 0.8 d high";
  const found =
    pitches < 0
      ? `ends ${say({ ...past, value: past.value.neg() })} inside the nut`
      : `comes ${atMost ? "at most " : ""}${say(past)} past the nut, ${sayNumber(pitches)} pitches`;
  return `${joint}: the ${atMost ? "stud" : "bolt"} ${found}: ${expected}${height}`;
}

function intoHole({ joint, reach, needed, short, why }: Data & { into: "hole" }): string {
  return `${joint}: the bolt reaches ${say(reach)} into the hole: expected ${say(needed)} of full thread (${why}), ${say(short)} more`;
}
