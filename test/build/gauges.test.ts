import { describe, expect, it } from "vitest";
import { gaugeReads, uncertaintyFor } from "../../server/build/judgement.ts";
import { q, shown } from "../quantities/written.ts";
import { buildOf, expectFindings, findingOf } from "./marked-build.ts";

const GAUGES = ["gauge-out-of-date", "unknown-reference"] as const;

const MIC = `
gauge mic "Micrometer"
  reads: 0..25 mm
  resolution: 0.01 mm
  calibrated: 2026-01-31 for 1 month
part disc "Disc"
  limit: thickness min 8.4 mm
`;

describe("a gauge", () => {
  it("is good until its calibration runs out, a missing day becoming the month's last", () => {
    const build = expectFindings(
      GAUGES,
      `${MIC}
day 2026-02-28
  measured: disc thickness 9 mm with mic
day 2026-03-01
  measured: disc thickness 9 mm with mic
                           ^^^^ gauge-out-of-date
`,
    );
    expect(findingOf(build, "gauge-out-of-date").data).toMatchObject({
      gauge: "mic",
      good: "2026-02-28",
      used: "2026-03-01",
    });
  });

  it("is good again from its calibration on, for as long as that says, else as the one before", () => {
    const build = expectFindings(
      GAUGES,
      `${MIC}
day 2026-03-05
  calibrated: mic
day 2026-04-05
  measured: disc thickness 9 mm with mic
  calibrated: mic for 12 month
day 2027-04-05
  measured: disc thickness 9 mm with mic
day 2027-04-06
  measured: disc thickness 9 mm with mic
                           ^^^^ gauge-out-of-date
`,
      "2028-01-01" as never,
    );
    const [mic] = build.standing.gauges.values();
    expect(mic?.calibrated).toMatchObject({ date: "2026-04-05", until: "2027-04-05" });
  });

  it("without a calibration never runs out", () => {
    expectFindings(
      GAUGES,
      `
      gauge rule "Steel rule"
        reads: 0..300 mm
      part disc "Disc"
      day 2026-05-02
        measured: disc thickness 9 mm with rule
      `,
    );
  });

  it("remembers what it was found to be", () => {
    const build = expectFindings(
      GAUGES,
      `${MIC}
day 2026-02-05
  found: mic damaged, dirty "dropped"
`,
    );
    const [mic] = build.standing.gauges.values();
    expect(mic?.found.map(({ condition }) => condition)).toEqual(["damaged", "dirty"]);
  });

  it("must be one that there is", () => {
    expectFindings(
      GAUGES,
      `${MIC}
day 2026-02-05
  measured: disc thickness 9 mm with mik
                                     ^^^ unknown-reference
  calibrated: mick
              ^^^^ unknown-reference
`,
    );
  });
});

/** The gauge of a log with these records, as a definition. */
function gaugeOf(...records: readonly string[]) {
  const { standing } = buildOf(
    `gauge dial "Dial gauge"\n${records.map((record) => `  ${record}\n`).join("")}\nday 2026-05-02\n  found: dial good\n`,
  );
  const [dial] = standing.gauges.values();
  if (dial === undefined) throw new Error("no gauge");
  return dial.definition;
}

describe("what a gauge reads", () => {
  it("lies in one of the ranges that it states, their ends included", () => {
    const dial = gaugeOf("reads: 0..10 mm, 20..30 mm");
    const reads = ["0 mm", "10 mm", "15 mm", "20 mm", "1 in", "31 mm"].map((text) =>
      gaugeReads(dial, q(text)),
    );
    expect(reads).toEqual([true, true, false, true, true, false]);
    expect(gaugeReads(dial, q("5 kg"))).toBe(false);
  });

  it("is not known of one that states none", () => {
    expect(gaugeReads(gaugeOf("resolution: 0.01 mm"), q("5 mm"))).toBeUndefined();
  });
});

describe("the uncertainty of a reading", () => {
  const told = (reading: string, stated: string | undefined, ...records: readonly string[]) => {
    const uncertainty = uncertaintyFor(
      stated === undefined ? undefined : q(stated),
      records.length === 0 ? undefined : gaugeOf(...records),
      q(reading),
    );
    return uncertainty === undefined ? undefined : shown(uncertainty);
  };

  it("is its own, else its gauge's, else by the gauge's resolution, else unknown", () => {
    const both = ["uncertainty: ± 0.004 mm", "resolution: 0.01 mm"];
    expect(told("9 mm", "0.02 mm", ...both)).toBe("0.02 mm");
    expect(told("9 mm", undefined, ...both)).toBe("0.004 mm");
    // 0.01 mm over the root of three (JCGM 100:2008, F.2.2.1, k = 2).
    expect(told("9 mm", undefined, "resolution: 0.01 mm")).toBe("0.00577 mm");
    expect(told("9 mm", undefined, "reads: 0..25 mm")).toBeUndefined();
    expect(told("9 mm", undefined)).toBeUndefined();
  });

  it("is a share of it where the gauge says so, in points of a reading in percent", () => {
    expect(told("50 N.m", undefined, "uncertainty: ± 4 %")).toBe("2 N.m");
    expect(told("50 %", "4 %")).toBe("4 %");
  });

  it("is not that of a gauge for something else", () => {
    expect(told("9 kg", undefined, "uncertainty: ± 0.004 mm")).toBeUndefined();
  });
});
