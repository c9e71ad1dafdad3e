/** What a hold point says is open, in words: whoever reads it has to know what to do. */
import { describe, expect, it } from "vitest";
import { said } from "./said.ts";

const OPENED = "  loosened: flange\n";
const TORQUED = `${OPENED}  torqued: flange 20 N.m\n`;

/** What the releases of a log are refused for, without the words that all refusals have. */
function refused(log: string): readonly string[] {
  const refusal = /^error released-with-open-items: road \(Road\) stays shut with \d+ items? open: /;
  return said(log)
    .filter((line) => refusal.test(line))
    .map((line) => line.replace(refusal, ""));
}

/** Of a joint and a day's work on it, with a release at its end. */
function ofJoint(joint: string, day: string): readonly string[] {
  return refused(
    `hold road "Road"\n  needs: joints\n\n${joint}\nday 2026-05-02\n${day}  released: road\n`,
  ).map((line) => line.replace(/^flange: not secured: /, ""));
}

function flange(lines: string): string {
  return `joint flange "Flange"\n${lines}`;
}

const TWENTY = "  torque: 20 N.m\n";

describe("of a joint that is not secured", () => {
  it.each([
    ["open since 2026-05-02", TWENTY, OPENED],
    ["only nipped", TWENTY, `${OPENED}  nipped: flange\n`],
    ["torque 24 N.m, over 22 N.m", TWENTY, `${OPENED}  torqued: flange 24 N.m\n`],
    ["torque 16 N.m, under 18 N.m", TWENTY, `${OPENED}  torqued: flange 16 N.m\n`],
    ["the 90 deg behind the torque are not written", "  torque: 20 N.m then 90 deg\n", TORQUED],
    [
      "turned 30 deg further, which nothing asks for",
      TWENTY,
      `${OPENED}  torqued: flange 20 N.m then 30 deg\n`,
    ],
    ["tightened by feel", `  safety: critical\n${TWENTY}`, `${OPENED}  tightened: flange\n`],
    [
      "no witness mark, not seen by a second pair of eyes",
      `${TWENTY}  mark: yes\n  second_check: yes\n`,
      TORQUED,
    ],
    [
      "seen by the one who did it",
      `${TWENTY}  second_check: yes\n`,
      `${OPENED}  torqued: flange 20 N.m by "JR"\n  seen: flange by "JR"\n`,
    ],
    ["no split pin", `${TWENTY}  lock: split_pin\n`, TORQUED],
    [
      "locked with tab washer, not with split pin",
      `${TWENTY}  lock: split_pin\n`,
      `${TORQUED}  locked: flange with tab_washer\n`,
    ],
    [
      "threadlocker not on the day of the torque",
      `${TWENTY}  lock: threadlocker\n`,
      `${TORQUED}\nday 2026-05-03\n  locked: flange with threadlocker\n`,
    ],
    [
      "to be checked after 1 h, ran 2 h",
      `${TWENTY}  recheck: after 1 h running\n`,
      `${TORQUED}  ran: vehicle 2 h\n`,
    ],
    [
      "moved when it was checked",
      `${TWENTY}  recheck: after 10 h running\n`,
      `${TORQUED}  ran: vehicle 2 h\n  rechecked: flange 20 N.m moved\n`,
    ],
    [
      "self-locking nut used again",
      `  safety: critical\n${TWENTY}  nut: self_locking nylon M10x1.5 class 8\n`,
      TORQUED,
    ],
    [
      "left-hand and right-hand thread",
      "  stud: 1 x 1/2-20 UNF x 2 in LH\n  nut: plain 1/2-20 UNF\n  torque: 60 lbf.ft\n",
      "",
    ],
    [
      "threads that do not go together",
      "  bolt: 2 x 5/16-18 UNC x 1 in\n  nut: plain 5/16 BSW\n  torque: 15 lbf.ft\n",
      "",
    ],
    [
      "bolt too short",
      "  bolt: 2 x M8x1.25x20 class 8.8\n  nut: plain M8x1.25 class 8 height 6.8 mm\n  grip: 17 mm\n  torque: 24 N.m\n  friction: zinc\n",
      "",
    ],
    [
      "bolt runs out of thread before it clamps",
      "  bolt: 1 x M8x1.25x60 class 8.8\n  nut: tapped 26 mm in steel\n  grip: 35 mm\n  torque: 24 N.m\n  friction: zinc\n",
      "",
    ],
  ])("%s", (words, joint, day) => {
    expect(ofJoint(flange(joint), day)).toEqual([words]);
  });

  it("which of its parts is on for trial only", () => {
    const joint = `part hub "Hub"\n\n${flange(`  joins: hub\n${TWENTY}`)}`;
    const day = `${OPENED}  removed: hub\n  fitted: hub for trial\n  torqued: flange 20 N.m\n`;
    expect(ofJoint(joint, day)).toEqual(["hub is on for trial only"]);
  });

  it("what is wrong with the wrench", () => {
    const wrench = (lines: string) =>
      ofJoint(
        `gauge wrench "Wrench"\n${lines}\n${flange(TWENTY)}`,
        `${OPENED}  torqued: flange 20 N.m with wrench\n`,
      );
    expect(wrench("  reads: 5..50 N.m\n  calibrated: 2024-01-01 for 12 month\n")).toEqual([
      "torqued with wrench, out of date",
    ]);
    expect(wrench("  reads: 1..5 N.m\n")).toEqual(["torqued with wrench, out of its range"]);
  });

  it("that it is as it was found, where nobody knows its past", () => {
    const log = `vehicle "Example"\n  past: unknown\n\nhold road "Road"\n  needs: joints\n\n${flange(TWENTY)}\nday 2026-05-02\n  released: road\n`;
    expect(refused(log)).toEqual(["flange: not secured: as found, its past unknown"]);
  });

  it("what the measurement says that it is set by", () => {
    const set = (limit: string, ...readings: readonly string[]) =>
      ofJoint(
        `part hub "Hub"\n${limit}\n${flange("  joins: hub\n  set_by: hub.end_float\n")}`,
        [OPENED, ...readings.map((reading) => `  measured: hub end_float ${reading}\n`)].join(""),
      );
    const limit = "  limit: end_float 0.02..0.06 mm\n";
    expect(set(limit)).toEqual(["hub.end_float is not measured"]);
    expect(set(limit, "0.08 mm")).toEqual(["hub.end_float is outside its limit"]);
    expect(set(limit, "0.055 mm ± 0.01 mm")).toEqual(["hub.end_float is not proved within its limit"]);
    expect(set("", "0.04 mm")).toEqual(["hub.end_float has no limit to judge it by"]);
    // What it is set to counts as well, against its setting.
    const toe = (value: string) =>
      ofJoint(
        `assembly front "Front"\n  setting: camber 1 deg ± 0.1 deg\n  setting: toe 1 mm ± 0.5 mm\n\n${flange("  set_by: front.toe\n")}`,
        `${OPENED}  set: front toe ${value}\n`,
      );
    expect(toe("3 mm")).toEqual(["front.toe is outside its limit"]);
    expect(toe("1.2 mm")).toEqual([]);
    // The newest counts.
    expect(set(limit, "0.08 mm", "0.04 mm")).toEqual([]);
    // One of its limits is enough to stand outside of.
    expect(set(`${limit}  limit: end_float max 0.05 mm\n`, "0.055 mm")).toEqual([
      "hub.end_float is outside its limit",
    ]);
  });
});
