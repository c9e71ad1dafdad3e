import { describe, expect, it } from "vitest";
import { expectFindings, findingOf } from "./marked-build.ts";

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
