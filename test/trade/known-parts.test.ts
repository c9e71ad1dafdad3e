import { describe, expect, test } from "vitest";
import { boreOfCode, knownParts } from "../../server/trade/known-parts.ts";
import { boreCirclips, shaftCirclips } from "../../server/trade/tables/circlips.ts";
import { parallelKeyRows, woodruffKeyRows } from "../../server/trade/tables/keys.ts";
import { oRingSeries } from "../../server/trade/tables/o-rings.ts";
import { bearingSeries } from "../../server/trade/tables/rolling-bearings.ts";

/** Dimensions in mm of a part, in the order of their names. */
function millimetres(name: string): readonly number[] {
  const part = knownParts().find((candidate) => candidate.name === name);
  return Object.values(part?.dimensions ?? {}).map((value) => Number((value * 1000).toFixed(3)));
}

describe("the standard parts", () => {
  test("have a name of their own in their family, a standard and positive dimensions", () => {
    const names = knownParts().map(({ family, name }) => `${family} ${name}`);
    expect(names.filter((name, place) => names.indexOf(name) !== place)).toEqual([]);
    const wrong = knownParts().filter(
      ({ standard, dimensions }) =>
        standard === "" || Object.values(dimensions).some((value) => !(value > 0 && value < 1)),
    );
    expect(wrong).toEqual([]);
  });

  test("hold each family", () => {
    const count = (family: string) => knownParts().filter((part) => part.family === family).length;
    expect(count("thread")).toBeGreaterThan(250);
    expect(count("rolling bearing")).toBeGreaterThan(200);
    expect(count("O-ring")).toBeGreaterThan(200);
    expect(count("circlip")).toBeGreaterThan(100);
    expect(count("roller chain")).toBeGreaterThan(20);
    expect(count("key")).toBeGreaterThan(40);
    expect(count("wire")).toBe(44 + 15);
    expect(count("spark plug")).toBeGreaterThan(10);
    expect(count("tyre")).toBeGreaterThan(1000);
  });
});

describe("a standard part says its standard, and what else there is to know", () => {
  test.each([
    ["6203", "ISO 15", "deep groove ball; the same in series 12, 72, N2, NU2"],
    ["604", "ISO 15", "deep groove ball"],
    ["61800", "ISO 15", "deep groove ball, thin; also called 6800"],
    ["30204", "ISO 355", "tapered roller"],
    ["LS 1/2 in", "BS 292", "inch ball bearing"],
    ["AS568-004", "AS568, ISO 3601-1", undefined],
    ["DIN 471 20 x 1.2", "DIN 471", "outside, on a shaft"],
    ["DIN 472 47 x 1.75", "DIN 472", "inside, in a bore"],
    ["ISO 606 04B", "ISO 606", undefined],
    ["ISO 606 06B", "ISO 606", "3/8 in x 7/32 in"],
    ["415", "motorcycle", undefined],
    ["parallel key 8 x 7", "DIN 6885-1", "for shafts over 22 up to 30 mm"],
    ["parallel key 3/32 x 3/32 in", "ASME B17.1", undefined],
    ["Woodruff 1 x 1.4 mm", "ISO 3912", undefined],
    ["Woodruff No. 204", "ASME B17.2", undefined],
    ["AWG 4/0", "ASTM B258", undefined],
    ["0.35 mm2", "vehicle cable", "a stranded conductor of this area is thicker"],
    ["0.5 mm2", "IEC 60228", "a stranded conductor of this area is thicker"],
    [
      "M10x1, 12.7 mm reach, gasket seat, 16 mm hexagon",
      "ISO 28741",
      "a reach that is too long can meet the piston",
    ],
    ["185/70R13", "ISO 4000-1", undefined],
  ])("%s", (name, standard, remark) => {
    const {
      name: _,
      family: __,
      dimensions: ___,
      ...told
    } = knownParts().find((part) => part.name === name) ?? {};
    expect(told).toEqual({ standard, ...(remark === undefined ? {} : { remark }) });
  });
});

describe("rolling bearings", () => {
  test("the bore follows from the last figures of the designation", () => {
    expect(["8", "00", "01", "02", "03", "04", "20"].map(boreOfCode)).toEqual([8, 10, 12, 15, 17, 20, 100]);
  });

  // Bore, outside, width as published in reprints of makers' tables (deep groove: an open list of bearing sizes).
  test.each([
    ["608", [8, 22, 7]],
    ["624", [4, 13, 5]],
    ["6000", [10, 26, 8]],
    ["6006", [30, 55, 13]],
    ["6200", [10, 30, 9]],
    ["6203", [17, 40, 12]],
    ["6205", [25, 52, 15]],
    ["6301", [12, 37, 12]],
    ["6303", [17, 47, 14]],
    ["6305", [25, 62, 17]],
  ])("%s", (name, expected) => {
    expect(millimetres(name)).toEqual(expected);
  });

  // Bore, outside, width of both rings together, from a maker's table of metric tapered rollers, bores 15 to 35 mm.
  test.each([
    ["30202", [15, 35, 11.75]],
    ["30302", [15, 42, 14.25]],
    ["32203", [17, 40, 17.25]],
    ["32303", [17, 47, 20.25]],
    ["32004", [20, 42, 15]],
    ["32204", [20, 47, 19.25]],
    ["30205", [25, 52, 16.25]],
    ["32305", [25, 62, 25.25]],
    ["32006", [30, 55, 17]],
    ["30306", [30, 72, 20.75]],
    ["32207", [35, 72, 24.25]],
    ["32307", [35, 80, 32.75]],
  ])("%s", (name, expected) => {
    expect(millimetres(name)).toEqual(expected);
  });

  test("within a series both diameters grow with the bore", () => {
    for (const { rows } of bearingSeries) {
      const bores = rows.map(([code]) => boreOfCode(code));
      const outsides = rows.map(([, outside]) => outside);
      expect(bores).toEqual([...new Set(bores)].sort((a, b) => a - b));
      expect(outsides).toEqual([...outsides].sort((a, b) => a - b));
    }
  });

  test("at one bore the series grow outwards: 618, 619, 60, 62, 63, 64", () => {
    const outsideAt = (series: string, code: string) =>
      bearingSeries.find((each) => each.series === series)?.rows.find(([each]) => each === code)?.[1];
    for (const code of ["04", "06", "08", "10", "12"]) {
      const outsides = ["618", "619", "60", "62", "63", "64"].map(
        (series) => outsideAt(series, code) ?? Number.NaN,
      );
      expect(outsides).toEqual([...new Set(outsides)].sort((a, b) => a - b));
    }
  });

  test("60 and 160 share the diameters and differ in width (dimension series 10 and 00)", () => {
    const narrow = bearingSeries.find(({ series }) => series === "160")?.rows ?? [];
    const normal = bearingSeries.find(({ series }) => series === "60")?.rows ?? [];
    for (const [code, outside, width] of narrow) {
      const [, same, wider = 0] = normal.find(([each]) => each === code) ?? [];
      expect(same).toBe(outside);
      expect(width).toBeLessThan(wider);
    }
  });
});

describe("O-rings", () => {
  test("the series have the cross sections and begin at the sizes of published AS568 charts", () => {
    expect(oRingSeries.map(({ crossSection }) => crossSection)).toEqual([0.07, 0.103, 0.139, 0.21, 0.275]);
    expect(oRingSeries.slice(1, 4).map(({ rows }) => rows[0])).toEqual([
      [102, 0.049],
      [201, 0.171],
      [309, 0.412],
    ]);
    expect(millimetres("AS568-001")).toEqual([0.737, 1.016]);
  });

  test("from -010 on they rise by sixteenths, eighths or quarters of an inch, to the thou", () => {
    for (const { rows } of oRingSeries) {
      const larger = rows.filter(([, inside]) => inside > 0.3);
      for (const [place, [, inside]] of larger.slice(1).entries()) {
        const step = inside - (larger[place]?.[1] ?? 0);
        const off = [1 / 16, 1 / 8, 1 / 4].map((due) => Math.abs(step - due));
        expect(Math.min(...off)).toBeLessThanOrEqual(0.00101);
      }
    }
  });

  test("-210 is 18.64 mm inside and 3.53 mm thick", () => {
    expect(millimetres("AS568-210")).toEqual([18.644, 3.531]);
  });
});

describe("circlips", () => {
  test("grip the groove: smaller than it on a shaft, larger in a bore", () => {
    for (const [nominal, thickness, free, groove] of shaftCirclips) {
      expect(free).toBeLessThan(groove);
      expect(groove).toBeLessThan(nominal);
      expect(thickness).toBeLessThan(nominal / 4);
    }
    for (const [nominal, , free, groove] of boreCirclips) {
      expect(free).toBeGreaterThan(groove);
      expect(groove).toBeGreaterThan(nominal);
    }
  });

  test("grooves deepen with the diameter, so a misprint stands out", () => {
    for (const rows of [shaftCirclips, boreCirclips]) {
      const depths = rows.map(([nominal, , , groove]) => Math.abs(groove - nominal) / 2);
      for (const [place, depth] of depths.slice(1).entries()) {
        expect(depth).toBeGreaterThanOrEqual((depths[place] ?? 0) - 0.26);
      }
    }
  });
});

describe("keys", () => {
  test("of parallel keys, the seats in shaft and hub together hold the height, with a little room on top", () => {
    for (const { height, shaftDepth, hubDepth } of parallelKeyRows) {
      expect(shaftDepth + hubDepth).toBeGreaterThan(height);
      expect(shaftDepth + hubDepth - height).toBeLessThanOrEqual(0.45);
    }
  });

  test("the ranges of shafts join", () => {
    for (const [place, { over }] of parallelKeyRows.slice(1).entries()) {
      expect(over).toBe(parallelKeyRows[place]?.upTo);
    }
  });

  test("an inch Woodruff key is numbered by 32nds of width and eighths of diameter (ASME B17.2)", () => {
    expect(millimetres("Woodruff No. 404")).toEqual([3.175, 5.156, 12.7]);
    expect(millimetres("Woodruff No. 1012")).toEqual([7.938, 16.281, 38.1]);
    for (const { height, diameter } of woodruffKeyRows) expect(height).toBeLessThan(diameter / 2);
  });
});
