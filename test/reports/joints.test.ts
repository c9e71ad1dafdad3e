import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { readBuild } from "../../server/build/build.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { jointsReport, jointsTable } from "../../server/reports/joints.ts";
import { textOf } from "../../server/reports/table.ts";
import { referenceRows } from "../standards/reference-rows.ts";

const read = (text: string) =>
  readBuild([{ path: "log.cotter", document: Document.read(text) }], { clock: "2026-06-01" as IsoDate });

/** The report of one joint of these records. */
const joint = (records: string, facts = "") => {
  const text = `vehicle "Example"\n\njoint bolts "Bolts"\n${records.replace(/^/gm, "  ")}\n\nday 2026-05-02\n${facts.replace(/^(?=.)/gm, "  ")}\n`;
  const [report] = jointsReport(read(text)).joints;
  if (report === undefined) throw new Error("no joint was read");
  return report;
};

const referenceRow = (id: string) => {
  const row = referenceRows("04_tightening_torque").find((candidate) => candidate.id === id);
  if (row === undefined) throw new Error(`there is no reference row ${id}`);
  return row;
};

describe("the preload of a joint", () => {
  it("is that of the published example of the short form", () => {
    // SAND2008-0371, Appendix C: 5/8-11 UNC, 1800 lbf·in, K = 0.2
    const { preload } = joint(
      "bolt: 1 x 5/8-11 UNC x 3 in grade 5\ntorque: 150 lbf.ft\nfriction: nut_factor 0.2",
    );
    const pounds = (preload?.value ?? 0) * (1000 / 4.4482216152605);
    expect(Math.abs(pounds - Number(referenceRow("B-010").expected))).toBeLessThan(0.005 * 14400);
  });

  it("scatters as there, by 35 % either way", () => {
    const { preloadRange } = joint(
      "bolt: 1 x 5/8-11 UNC x 3 in grade 5\ntorque: 150 lbf.ft\nfriction: nut_factor 0.2",
    );
    const pounds = (preloadRange?.upper?.value ?? 0) * (1000 / 4.4482216152605);
    expect(Math.abs(pounds - Number(referenceRow("B-011").expected))).toBeLessThan(0.005 * 19440);
  });

  it("is that of VDI 2230 by the long form", () => {
    // M8x1 class 8.8, both frictions 0.12: 20.2 kN at 26.1 N.m
    const { preload } = joint(
      `bolt: 1 x M8x1x30 class 8.8\ntorque: ${referenceRow("B-019").expected} N.m\nfriction: thread 0.12 head 0.12`,
    );
    expect(preload?.value).toBeCloseTo(Number(referenceRow("B-018").expected), 0);
  });

  it("says that it is an estimate, and what share of proof it is", () => {
    // M8 class 8.8: 21.2 kN of proof load (ISO 898-1); 24 N.m at K 0.20 is 15 kN
    const report = joint("bolt: 1 x M8x1.25x30 class 8.8\ntorque: 24 N.m\nfriction: zinc");
    expect(report.preload?.text).toBe("about 15.0 kN (9.75 kN to 20.3 kN)");
    expect(report.percentOfProof).toBeCloseTo(70.8, 1);
    expect(report.frictionAssumed).toBe(false);
  });

  it("has no share of proof where the class is unknown, and none at all without a bolt", () => {
    expect(joint("bolt: 1 x M8x1.25x30 class unknown\ntorque: 24 N.m")).toMatchObject({
      percentOfProof: null,
      frictionAssumed: true,
    });
    expect(joint("torque: 24 N.m")).toMatchObject({ preload: null, percentOfProof: null, bolt: null });
  });
});

describe("the torque of a joint", () => {
  it("is given with its limits, and what follows it", () => {
    expect(joint("torque: 25 lbf.ft then 60 deg").torque).toMatchObject({
      text: "25 lbf.ft (22.5 lbf.ft to 27.5 lbf.ft) then 60 deg",
      target: { value: 25, unit: "lbf.ft" },
      lower: { value: 22.5 },
      upper: { value: 27.5 },
      angle: { value: 60, unit: "deg" },
      estimated: false,
    });
    expect(joint("torque: min 35 lbf.ft to slot").torque).toMatchObject({
      text: "at least 35 lbf.ft to the slot",
      upper: null,
    });
    expect(joint("torque: by hand").torque).toMatchObject({ text: "by hand", target: null });
  });

  it("from the class says that it is computed", () => {
    // 75 % of 21.2 kN at K 0.20 and 8 mm: 25.4 N.m
    expect(joint("bolt: 1 x M8x1.25x30 class 8.8\ntorque: from class\nfriction: zinc").torque).toMatchObject({
      text: "about 25.4 N.m (22.9 N.m to 28.0 N.m), from class",
      estimated: true,
    });
  });

  it("is none of a joint that is set by a measurement", () => {
    const build = read(
      'vehicle "Example"\npart hub "Hub"\n  limit: end_float 0.05..0.13 mm\njoint hub_nut "Hub nut"\n  set_by: hub.end_float\n',
    );
    expect(jointsReport(build).joints[0]).toMatchObject({ torque: null, setBy: "hub.end_float" });
  });
});

describe("what is past the nut", () => {
  it("is a length and a number of pitches", () => {
    const report = joint(
      "bolt: 1 x M8x1.25x30 class 8.8\nnut: plain M8 height 6.8 mm\ngrip: 18 mm\ntorque: 24 N.m\nfriction: zinc",
    );
    expect(report).toMatchObject({ protrusion: { value: 5.2, unit: "mm" }, protrusionPitches: 4.16 });
  });
});

describe("the state of a joint", () => {
  it("is told with what it wants, why, and where that stands", () => {
    const report = joint(
      "torque: 24 N.m\nlock: lockwire\nmark: yes\nafter: alignment",
      'torqued: bolts 24 N.m by "JR"\nlocked: bolts\n',
    );
    expect(report).toMatchObject({
      state: "locked",
      secured: false,
      wanting: [{ code: "mark-missing", text: "no witness mark", file: "log.cotter", line: 10 }],
      why: [
        { text: "torqued to 24 N.m on 2026-05-02", file: "log.cotter", line: 10 },
        { text: "locked with lockwire on 2026-05-02", line: 11 },
      ],
    });
  });
});

describe("the printed sheet", () => {
  const build = read(`
vehicle "Example"
job alignment "Alignment"

assembly front "Front"
joint front.bolts "Bolts"
  torque: 24 N.m
  lock: lockwire
  mark: yes
joint front.arm "Arm"
  torque: 60 N.m
  after: alignment

day 2026-05-02
  torqued: front.bolts 24 N.m
  locked: front.bolts
  nipped: front.arm
`);
  const [section] = jointsTable(build).sections;

  it("has a box for what is still to be done, under its assembly", () => {
    expect(section?.heading).toBe("Front (front)");
    const [bolts, arm] = section?.rows ?? [];
    expect(bolts?.cells).toMatchObject({
      name: "bolts",
      torque: { tone: "good" },
      lock: { tone: "good" },
      mark: { box: true },
      secured: { text: "open" },
    });
    expect(arm?.cells).toMatchObject({ torque: { box: true }, after: "alignment, not yet" });
  });

  it("says what is wanting and where", () => {
    expect(section?.rows[0]?.remarks).toEqual(["no witness mark: log.cotter:15"]);
  });

  it("says that figures are estimates and that preload scatters", () => {
    const { cautions } = jointsTable(build);
    expect(cautions.join(" ")).toMatch(/maker's figure comes first.*± 25 to 35 %/s);
    expect(textOf(section?.rows[1]?.cells.state)).toBe("nipped");
  });
});
