/** Whether a wrench is fine enough for a torque, and at which figures the answer changes. */
import { describe, expect, it } from "vitest";
import { shown } from "../quantities/written.ts";
import { buildOf, findingsOf } from "./marked-build.ts";

/** What is said of a joint of some torque, tightened to so much with a wrench of these records. */
function said(torque: string, reading: string, ...records: readonly string[]) {
  const build = buildOf(`
part hub "Hub"
part disc "Disc"
joint bolts "Disc to hub"
  joins: hub, disc
  torque: ${torque}
gauge wrench "Torque wrench"
${records.map((record) => `  ${record}\n`).join("")}
day 2026-05-02
  fitted: hub, disc
  torqued: bolts ${reading} with wrench
`);
  return findingsOf(build, ["gauge-too-coarse"]).map(({ data }) => data);
}

// The zone of 24 N.m ± 10 % is 4.8 N.m: a quarter of it is 1.2 N.m, which is 5 % of 24 N.m.
describe("a wrench is coarse for a torque", () => {
  it("above a quarter of its zone, not at it", () => {
    expect(said("24 N.m ± 10 %", "24 N.m", "uncertainty: ± 5 %")).toEqual([]);
    const [coarse] = said("24 N.m ± 10 %", "24 N.m", "uncertainty: ± 5.1 %");
    expect(coarse).toMatchObject({ is: "coarse for a torque", gauge: "wrench", most: 0.25 });
    expect(coarse).toHaveProperty("ratio", expect.closeTo(0.255, 10));
    expect(coarse?.is === "coarse for a torque" && shown(coarse.zone)).toBe("4.8 N.m");
  });

  it("whatever the units of the two", () => {
    // 0.9 lbf.ft is 1.22 N.m.
    expect(said("24 N.m ± 10 %", "24 N.m", "uncertainty: ± 0.9 lbf.ft")).toHaveLength(1);
    expect(said("24 N.m ± 10 %", "24 N.m", "uncertainty: ± 0.88 lbf.ft")).toEqual([]);
  });

  it("is not said of one whose uncertainty nobody knows, or is of something else", () => {
    expect(said("24 N.m ± 10 %", "24 N.m", "reads: 10..60 N.m")).toEqual([]);
    expect(said("24 N.m ± 10 %", "24 N.m", "uncertainty: ± 5 mm")).toEqual([]);
  });

  it("is not said where the torque leaves no zone, or none is asked for", () => {
    expect(said("24 N.m ± 0 N.m", "24 N.m", "uncertainty: ± 5 %")).toEqual([]);
    expect(said("by hand", "24 N.m", "uncertainty: ± 50 %")).toEqual([]);
  });
});

// A fifth of 60 N.m is 12 N.m.
describe("a wrench is used low in its range", () => {
  it("below a fifth of the most that it reads, not at it", () => {
    expect(said("12 N.m", "12 N.m", "reads: 10..60 N.m")).toEqual([]);
    expect(said("12 N.m", "11.9 N.m", "reads: 10..60 N.m")).toMatchObject([
      { is: "low in its range", gauge: "wrench", least: 0.2, ratio: expect.closeTo(11.9 / 60, 10) },
    ]);
  });

  it("which is told before that it is coarse", () => {
    expect(said("11 N.m ± 5 %", "11 N.m", "reads: 10..60 N.m", "uncertainty: ± 9 %")).toMatchObject([
      { is: "low in its range" },
    ]);
  });

  it("is not said above its range, which is another complaint", () => {
    expect(said("70 N.m", "70 N.m", "reads: 10..60 N.m")).toEqual([]);
  });

  it("counts from the range that is best for it", () => {
    expect(said("11 N.m", "11 N.m", "reads: 2..12 N.m, 10..60 N.m")).toEqual([]);
    expect(said("11 N.m", "11 N.m", "reads: 10..60 N.m, 2..12 N.m")).toEqual([]);
    expect(said("11 N.m", "11 N.m", "reads: 2..11 N.m, 10..60 N.m")).toEqual([]);
    expect(said("11 N.m", "11 N.m", "reads: 2..10 N.m, 10..60 N.m")).toMatchObject([
      { is: "low in its range", ratio: expect.closeTo(11 / 60, 10) },
    ]);
    expect(said("11 N.m", "11 N.m", "reads: 0..1 mm, 10..60 N.m")).toHaveLength(1);
  });
});
