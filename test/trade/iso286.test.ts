import { describe, expect, test } from "vitest";
import { isFaulty } from "../../server/trade/function.ts";
import { deviationsOf, readToleranceClass, standardTolerance } from "../../server/trade/iso286.ts";
import {
  fineRanges,
  lowerShaftDeviations,
  mainRanges,
  standardTolerances,
  upperShaftDeviations,
} from "../../server/trade/tables/iso286.ts";
import { computed, result } from "./answers.ts";

/** `+30 / 0` of `52 H7`, in µm, or why there is none. */
function deviations(text: string): string {
  const [size = "", cls = ""] = text.split(" ");
  const tolerance = readToleranceClass(cls);
  if (tolerance === undefined) return "no class";
  const pair = deviationsOf(Number(size), tolerance);
  return isFaulty(pair) ? pair.fault.kind : `${pair.upper} / ${pair.lower}`;
}

function grade(size: number, name: string): number {
  const width = standardTolerance(size, name);
  if (typeof width !== "number") throw new Error(JSON.stringify(width.fault));
  return width;
}

describe("limit deviations (ISO 286-2, from memory)", () => {
  test.each([
    ["52 H7", "30 / 0"],
    ["50 F7", "50 / 25"],
    ["50 G7", "34 / 9"],
    ["50 K7", "7 / -18"],
    ["50 N7", "-8 / -33"],
    ["50 P7", "-17 / -42"],
    ["25 M7", "0 / -21"],
    ["25 N9", "0 / -52"],
    ["25 P9", "-22 / -74"],
    ["25 J7", "12 / -9"],
    ["25 JS7", "10.5 / -10.5"],
    ["25 S7", "-27 / -48"],
    ["25 D10", "149 / 65"],
    ["25 C11", "240 / 110"],
    ["2 K7", "0 / -10"],
    ["2 N9", "-4 / -29"],
    ["25 d9", "-65 / -117"],
    ["25 e8", "-40 / -73"],
    ["25 j6", "9 / -4"],
    ["25 k11", "130 / 0"],
    ["25 r6", "41 / 28"],
    ["25 u6", "61 / 48"],
    ["200 s7", "168 / 122"],
    // Δ is added up to IT8 of K, M and N, and up to IT7 beyond them
    ["25 K8", "10 / -23"],
    ["25 M8", "4 / -29"],
    ["25 N8", "-3 / -36"],
    ["25 P8", "-22 / -55"],
    ["3 P7", "-6 / -16"],
    ["3.01 P7", "-8 / -20"],
    ["3 M7", "-2 / -12"],
    ["3 K9", "0 / -25"],
    ["3 N9", "-4 / -29"],
    ["3.01 N9", "0 / -30"],
    // the one value that ISO 286-1 sets apart from its rule, and those around it
    ["300 M6", "-9 / -41"],
    ["315 M6", "-9 / -41"],
    ["250 M6", "-8 / -37"],
    ["315.01 M6", "-10 / -46"],
    ["300 M7", "0 / -52"],
    ["300 K6", "5 / -27"],
  ])("%s is %s", (text, expected) => {
    expect(deviations(text)).toBe(expected);
  });

  test("a size at the end of a range belongs to it", () => {
    expect(deviations("30 H7")).toBe("21 / 0");
    expect(deviations("30.01 H7")).toBe("25 / 0");
  });

  test.each([
    ["20 t6", "t begins above 24 mm"],
    ["12 v6", "v begins above 14 mm"],
    ["18 y6", "y begins above 18 mm"],
    ["12 ef6", "ef ends at 10 mm"],
    ["1 a11", "a and b begin above 1 mm"],
    ["1 N9", "N above IT8 begins above 1 mm"],
    ["25 j9", "j ends at j8"],
    ["25 K9", "K above IT8 ends at 3 mm"],
    ["25 M2", "the standard gives no Δ below IT3"],
    ["25 M0", "nor of IT0"],
    ["25 P01", "nor of IT01"],
    ["20 T9", "T begins above 24 mm"],
    ["12 EF7", "EF ends at 10 mm"],
  ])("%s is refused: %s", (text) => {
    expect(deviations(text)).toBe("not-in-table");
  });

  test("a size above 500 mm is out of range", () => {
    expect(result("limits_of", "600 H7")).toMatchObject({
      fault: { kind: "out-of-range", parameter: "size", max: 0.5, unit: "mm" },
    });
  });

  test("what is in no table is told with its size and the grades that there are", () => {
    expect(result("limits_of", "12 ef6")).toEqual({
      fault: { kind: "not-in-table", wanted: "ef6 at 12 mm", table: "ISO 286-1", known: [] },
    });
    expect(result("tolerance_grade", 0.012, "IT19")).toEqual({
      fault: {
        kind: "not-in-table",
        wanted: "IT19 at 12 mm",
        table: "ISO 286-1",
        known: ["IT01", "IT0", "IT1 … IT18"],
      },
    });
    expect(result("tolerance_grade", 0.012, "IT1x")).toEqual({
      fault: { kind: "unreadable", text: "IT1x", expected: 'a standard tolerance grade, as in "IT7"' },
    });
  });

  test.each(["52.5 H7/p6", " 52.5mm H7 / p6 ", "52.5 mm H7/p6"])("%j is read as a fit", (text) => {
    expect(result("fit_range", text)).toMatchObject({
      notes: ["interference fit, 2 to 51 µm (negative is interference)", "H7: +30 / 0 µm; p6: +51 / +32 µm"],
    });
  });

  test.each(["52.x H7/p6", "52 h7/p6", "52 H7/p6 7", "52 H7", "a 52 H7/p6"])("%j is no fit", (text) => {
    expect(result("fit_range", text)).toEqual({
      fault: {
        kind: "unreadable",
        text,
        expected: 'a size in mm, a hole and a shaft class, as in "52 H7/p6"',
      },
    });
  });

  test.each([" 52.5 H7 ", "52.5mm H7", "52.5 mm H7"])(
    "%j is read as limits, and said as it is written",
    (text) => {
      expect(result("limits_of", text)).toMatchObject({
        value: { lower: 0.0525, upper: 0.05253 },
        notes: [`${text.trim()}: +30 / 0 µm (ISO 286)`],
      });
    },
  );

  test.each(["H19", "7H", "1H7", "H7s", "Hh7", "Js9", "jS9", "Ef7", "i7", "H", "js07"])(
    "%s is no class",
    (text) => {
      expect(readToleranceClass(text)).toBeUndefined();
    },
  );
});

describe("the tables agree with the formulas of ISO 286-1", () => {
  const means = (ranges: readonly number[]) =>
    ranges.map((upTo, place) => Math.sqrt((place === 0 ? 1 : (ranges[place - 1] ?? 1)) * upTo));
  const mainMeans = means(mainRanges);
  const fineMeans = means(fineRanges);

  const multiples = {
    5: 7,
    6: 10,
    7: 16,
    8: 25,
    9: 40,
    10: 64,
    11: 100,
    12: 160,
    13: 250,
    14: 400,
    15: 640,
    16: 1000,
    17: 1600,
    18: 2500,
  };

  test.each(Object.entries(multiples))(
    "IT%s is %d i, within the rounding of the standard",
    (name, multiple) => {
      for (const [place, width] of (standardTolerances[name] ?? []).entries()) {
        const mean = mainMeans[place] ?? Number.NaN;
        const unit = 0.45 * Math.cbrt(mean) + 0.001 * mean;
        // Rounded to whole micrometres, coarse grades to round figures; up to 3 mm the standard departs a little.
        const allowed = place === 0 ? 0.2 * multiple * unit : Math.max(1, 0.09 * multiple * unit);
        expect(Math.abs(width - multiple * unit)).toBeLessThanOrEqual(allowed);
      }
    },
  );

  const it = (name: string, size: number) => grade(size, name);
  const formulas: Readonly<Record<string, (mean: number, size: number) => number>> = {
    a: (mean) => -(mean <= 120 ? 265 + 1.3 * mean : 3.5 * mean),
    b: (mean) => -(mean <= 160 ? 140 + 0.85 * mean : 1.8 * mean),
    c: (mean) => -(mean <= 40 ? 52 * mean ** 0.2 : 95 + 0.8 * mean),
    d: (mean) => -16 * mean ** 0.44,
    e: (mean) => -11 * mean ** 0.41,
    f: (mean) => -5.5 * mean ** 0.41,
    g: (mean) => -2.5 * mean ** 0.34,
    h: () => 0,
    k: (mean) => 0.6 * Math.cbrt(mean),
    m: (_, size) => it("7", size) - it("6", size),
    n: (mean) => 5 * mean ** 0.34,
    p: (_, size) => it("7", size) + 2.5,
    r: (mean, size) =>
      Math.sqrt((it("7", size) + 2.5) * (mean <= 50 ? it("8", size) + 2 : it("7", size) + 0.4 * mean)),
    s: (mean, size) => (mean <= 50 ? it("8", size) + 2 : it("7", size) + 0.4 * mean),
    t: (mean, size) => it("7", size) + 0.63 * mean,
    u: (mean, size) => it("7", size) + mean,
    v: (mean, size) => it("7", size) + 1.25 * mean,
    x: (mean, size) => it("7", size) + 1.6 * mean,
    y: (mean, size) => it("7", size) + 2 * mean,
    z: (mean, size) => it("7", size) + 2.5 * mean,
    za: (mean, size) => it("8", size) + 3.15 * mean,
    zb: (mean, size) => it("9", size) + 4 * mean,
    zc: (mean, size) => it("10", size) + 5 * mean,
  };

  test.each(Object.keys(formulas))("deviation %s", (letters) => {
    const formula = formulas[letters];
    const row = upperShaftDeviations[letters] ?? lowerShaftDeviations[letters] ?? [];
    const fine = row.length === fineRanges.length;
    const [ranges, rangeMeans] = fine ? [fineRanges, fineMeans] : [mainRanges, mainMeans];
    for (const [place, deviation] of row.entries()) {
      // In its smaller ranges the standard departs from its formulas: up to 3 mm, with the finer ranges up to 50 mm.
      const size = ranges[place] ?? Number.NaN;
      if (deviation === undefined || size <= (fine ? 50 : 3)) continue;
      const expected = formula?.(rangeMeans[place] ?? Number.NaN, size) ?? Number.NaN;
      // Small values are rounded to whole micrometres, large ones to 2, 5, 10 or 50.
      expect(Math.abs(deviation - expected)).toBeLessThanOrEqual(Math.max(2.5, 0.05 * Math.abs(expected)));
    }
  });
});

describe("fits", () => {
  test.each([
    ["52 H7/p6", "interference fit, 2 to 51 µm"],
    ["40 H7/n6", "transition fit, 33 µm interference to 8 µm clearance"],
    ["50 H8/f7", "clearance fit, 25 to 89 µm"],
  ])("%s is a %s", (text, words) => {
    expect(computed("fit_range", text).notes?.[0]).toContain(words);
  });

  test("say the deviations of both", () => {
    expect(computed("fit_range", "52 H7/p6").notes).toContain("H7: +30 / 0 µm; p6: +51 / +32 µm");
  });

  test.each(["52 H7", "52 h7/H6", "H7/p6", "52 H7-p6"])("%j is not read as a fit", (text) => {
    expect(result("fit_range", text)).toMatchObject({ fault: { kind: "unreadable" } });
  });
});

describe("limits of size", () => {
  test("are exact to the half micrometre", () => {
    expect(computed("limits_of", "52 H7").value).toEqual({ lower: 0.052, upper: 0.05203 });
    expect(computed("limits_of", "25.5h6").value).toEqual({ lower: 0.025487, upper: 0.0255 });
    expect(computed("limits_of", "25 JS7").value).toEqual({ lower: 0.0249895, upper: 0.0250105 });
  });

  test("need a size and a class", () => {
    expect(result("limits_of", "52")).toMatchObject({ fault: { kind: "unreadable", text: "52" } });
    expect(result("tolerance_grade", 0.052, "H7")).toMatchObject({ fault: { kind: "unreadable" } });
    expect(result("tolerance_grade", 0.052, "IT19")).toMatchObject({ fault: { kind: "not-in-table" } });
  });
});
