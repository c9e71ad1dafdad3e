import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cosine, sine } from "../../server/expressions/angles.ts";
import { decimal } from "../../server/quantities/decimal.ts";
import { fault, number, quantity, shown } from "./calculated.ts";

describe("least, greatest, sum and mean", () => {
  test.each([
    ["min(9.12 mm, 9.10 mm, 9.14 mm)", "9.10 mm"],
    ["max(1 in, 25 mm)", "1 in"],
    ["min(1 in, 25 mm)", "25 mm"],
    ["sum(1.6 mm, 1.6 mm, 14 mm)", "17.2 mm"],
    ["mean(9.12 mm, 9.10 mm, 9.14 mm)", "9.12 mm"],
    ["mean(1 in, 12.7 mm)", "0.75 in"],
    ["max(20 degC, 70 degF)", "70 degF"],
    ["min(3)", "3"],
    ["abs(9.12 mm - 9.50 mm)", "0.38 mm"],
  ])("%s is %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });

  test.each([
    ["min(1 mm, 1 N)", "wrong-dimension at 1 N"],
    ["mean(1 mm, 2 mm, 1 N)", "wrong-dimension at 1 N"],
    ["sum(1 mm, 2 mm, 1 N)", "wrong-dimension at 1 N"],
    ['max("a", 1)', 'wrong-dimension at "a"'],
    ['sum(1, "a")', 'wrong-dimension at "a"'],
    ["abs(M10)", "wrong-dimension at M10"],
    ["mean(M10, 1 mm)", "wrong-dimension at M10"],
    ["min()", "out-of-range-argument at min()"],
    ["abs(1, 2)", "out-of-range-argument at abs(1, 2)"],
  ])("%s: %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });
});

describe("rounding", () => {
  test.each([
    ["round(54.232 N.m)", "54 N.m"],
    ["round(54.232 N.m, 1)", "54.2 N.m"],
    ["round(54 N.m, 2)", "54.00 N.m"],
    // ISO 80000-1, annex B, rule A: a half goes to the even neighbour.
    ["round(12.25, 1)", "12.2"],
    ["round(12.35, 1)", "12.4"],
    ["round(2.5)", "2"],
    ["round(-2.5)", "-2"],
    ["round(-0.4)", "0"],
    ["round(1.2345 in in mm, 3)", "31.356 mm"],
  ])("%s is %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });

  test.each([
    ["round(1.5 mm, 1 mm)", "out-of-range-argument at 1 mm"],
    ["round(1.5 mm, 0.5)", "out-of-range-argument at 0.5"],
    ["round(1.5 mm, -1)", "out-of-range-argument at -1"],
    ["round(1.5 mm, 31)", "out-of-range-argument at 31"],
    ['round("a")', 'wrong-dimension at "a"'],
  ])("%s: %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });
});

describe("the square root", () => {
  test.each([
    ["sqrt(4 mm2)", "2 mm"],
    ["sqrt(2.25)", "1.5"],
    ["sqrt(9 m2/s2)", "3 m/s"],
    ["sqrt(0)", "0"],
  ])("%s is %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });

  test.each([
    ["sqrt(2 N.m)", "wrong-dimension at 2 N.m"],
    ["sqrt(-4)", "out-of-range-argument at -4"],
    ["sqrt(20 degC)", "wrong-dimension at 20 degC"],
    ['sqrt("4")', 'wrong-dimension at "4"'],
  ])("%s: %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });

  test("of 2 has the digits of OEIS A002193", () => {
    expect(quantity("sqrt(2)").value.toString()).toBe("1.414213562373095048801688724209698");
  });
});

describe("sines and their kind", () => {
  // Exact values of the angles of the equilateral triangle and of the square.
  test.each([
    ["sin(30 deg)", "0.5"],
    ["sin(90 deg)", "1"],
    ["sin(180 deg)", "0"],
    ["sin(210 deg)", "-0.5"],
    ["sin(-30 deg)", "-0.5"],
    ["cos(60 deg)", "0.5"],
    ["cos(90 deg)", "0"],
    ["cos(180 deg)", "-1"],
    ["cos(0 deg)", "1"],
    ["tan(45 deg)", "1"],
    ["tan(135 deg)", "-1"],
    ["sin(1800 arcmin)", "0.5"],
    ["asin(0.5)", "30 deg"],
    ["asin(-1)", "-90 deg"],
    ["acos(0.5)", "60 deg"],
    ["acos(-1)", "180 deg"],
    ["atan(1)", "45 deg"],
    ["atan(50 %) in arcmin", "1590 arcmin"],
    ["asin(0.5) in rad", "0.524 rad"],
  ])("%s is %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });

  test("the sine of 45 deg has the digits of OEIS A010503", () => {
    expect(quantity("sin(45 deg)").value.toString()).toBe("0.707106781186547524400844362104849");
  });

  test.each([
    ["sin(30)", "wrong-dimension at 30"],
    ["cos(30 mm)", "wrong-dimension at 30 mm"],
    ["tan(90 deg)", "out-of-range-argument at 90 deg"],
    ["tan(270 deg)", "out-of-range-argument at 270 deg"],
    ["asin(2)", "out-of-range-argument at 2"],
    ["acos(-1.01)", "out-of-range-argument at -1.01"],
    ["atan(1 mm)", "wrong-dimension at 1 mm"],
    ['sin("30 deg")', 'wrong-dimension at "30 deg"'],
  ])("%s: %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });

  test("a bare number is offered deg and rad", () => {
    const found = fault("sin(30)");
    expect(found.message).toBe("sin takes an angle, such as 30 deg, not a plain number (30)");
    expect(found.fixes.map(({ text, start }) => [start, text])).toEqual([
      [6, " deg"],
      [6, " rad"],
    ]);
  });

  test("agree with binary floats at any angle", () => {
    fc.assert(
      fc.property(fc.integer({ min: -720_000, max: 720_000 }), (thousandths) => {
        const degrees = thousandths / 1000;
        const radians = (degrees * Math.PI) / 180;
        expect(sine(decimal(degrees)).toNumber()).toBeCloseTo(Math.sin(radians), 12);
        expect(cosine(decimal(degrees)).toNumber()).toBeCloseTo(Math.cos(radians), 12);
      }),
    );
  });

  test("turns beyond all use still come back exactly", () => {
    // 10^90 leaves 280 when divided by 360: 10^n ends in 280 from n = 3 on.
    expect(quantity("sin(1e90 deg)").value.toString()).toBe(quantity("sin(280 deg)").value.toString());
  });

  test("an inverse gives the angle back", () => {
    fc.assert(
      fc.property(fc.integer({ min: -8999, max: 8999 }), (hundredths) => {
        const degrees = (hundredths / 100).toFixed(2);
        expect(number(`asin(sin(${degrees} deg))`)).toBeCloseTo(Number(degrees), 10);
        expect(number(`atan(tan(${degrees} deg))`)).toBeCloseTo(Number(degrees), 10);
      }),
    );
  });
});
