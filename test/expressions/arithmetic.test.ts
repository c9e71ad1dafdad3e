import { describe, expect, test } from "vitest";
import { calculate } from "../../server/expressions/calculation.ts";
import { formatValue } from "../../server/expressions/value.ts";
import { decimal } from "../../server/quantities/decimal.ts";
import type { ExchangeRate } from "../../server/quantities/money.ts";
import { readCurrency } from "../../server/quantities/money.ts";
import { fault, names, number, shown } from "./calculated.ts";

describe("numbers and units", () => {
  test.each([
    ["0.1 in + 0.2 in", "0.3 in"],
    ["0.1 + 0.2", "0.3"],
    ["54 mm - 53.9 mm", "0.1 mm"],
    ["0.5 m + 20 mm", "0.52 m"],
    ["20 mm + 0.5 m", "520 mm"],
    ["3 mm * 4 mm", "12 mm2"],
    ["200 N * 0.25 m", "50 N.m"],
    ["12 W / 12 V", "1 A"],
    ["1/3 ft in in", "4 in"],
    ["1-3/8 in + 1/8 in", "1.5 in"],
    ["3 in in mm", "76.2 mm"],
    ["1 deg 30 arcmin", "1.5 deg"],
    ["2 h 30 min", "2.5 h"],
    ["100 mm * 5 %", "5 mm"],
    ["1 + 5 %", "1.05"],
    ["5 turn + 1 turn", "6 turn"],
    ["-5 mm", "-5 mm"],
    ["2 - -3", "5"],
    ["2 × 3 mm", "6 mm"],
  ])("%s is %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });

  test.each([
    ["2 + 3 * 4", "14"],
    ["(2 + 3) * 4", "20"],
    ["2 ^ 3 ^ 2", "512"],
    ["-2 ^ 2", "-4"],
    ["(-2) ^ 2", "4"],
    ["12 / 3 / 2", "2"],
    ["10 - 4 - 3", "3"],
    ["1 in + 1 in in mm", "50.8 mm"],
  ])("the order of operators: %s is %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });

  // NIST SP 811 (2008), appendix B.8: the values of units that are exact, and to seven figures those that are not.
  test.each([
    ["1 lbf.ft in N.m", 1.355818],
    ["1 psi in kPa", 6.894757],
    ["1 hp in W", 745.6999],
    ["1 inHg in kPa", 3.386389],
    ["1 mile in km", 1.609344],
    ["1 us_gal in l", 3.785412],
    ["1 imp_gal in l", 4.54609],
  ])("%s", (text, expected) => {
    expect(Number(number(text).toPrecision(7))).toBe(expected);
  });

  test("a result has as many figures as its least precise input, at least three", () => {
    expect(shown("40 lbf.ft in N.m")).toBe("54.2 N.m");
    expect(shown("40.00 lbf.ft in N.m")).toBe("54.23 N.m");
    expect(shown("10 mm / 3")).toBe("3.33 mm");
    expect(shown("10.000 mm / 3.0000")).toBe("3.3333 mm");
  });
});

describe("powers and roots", () => {
  test.each([
    ["(2 mm) ^ 3", "8 mm3"],
    ["(2 mm) ^ -1", "0.5 1/mm"],
    ["2 ^ 10", "1024"],
    ["27 ^ (1/3)", "3"],
    ["8 ^ (2/3)", "4"],
    ["81 ^ 0.25", "3"],
    ["(8 cc) ^ (1/3)", "20 mm"],
    ["(27 mm3) ^ (1/3)", "3 mm"],
    ["(16 mm4) ^ (1/4)", "2 mm"],
    ["(4 mm2) ^ 0.5", "2 mm"],
    ["0 ^ 0", "1"],
  ])("%s is %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });

  test("a power that is no root is computed with 34 digits", () => {
    // The binary floats of the JavaScript engine are the outside check; the cube root of 2 is OEIS A002580.
    expect(number("2.0 ^ 0.7")).toBeCloseTo(2 ** 0.7, 14);
    expect(number("2 ^ (1/3)")).toBe(1.2599210498948732);
    expect(number("2 ^ -0.5")).toBe(Math.SQRT1_2);
  });

  test.each([
    ["(2 mm) ^ 0.5", "wrong-dimension at (2 mm)"],
    ["(2 mm) ^ 0.7", "wrong-dimension at 0.7"],
    ["2 ^ (1 mm)", "wrong-dimension at (1 mm)"],
    ["(-8) ^ (1/3)", "out-of-range-argument at (-8)"],
    ["2 ^ 1001", "out-of-range-argument at 1001"],
    ["(2 mm) ^ 13", "out-of-range-argument at 13"],
    ["0 ^ -1", "out-of-range-argument at 0"],
    ["(20 degC) ^ 2", "wrong-dimension at (20 degC)"],
  ])("%s: %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });
});

describe("unlike dimensions", () => {
  test.each([
    ["1 N.m + 1 mm", "1 mm", "cannot add a torque (1 N.m) and a length (1 mm)"],
    ["1 N.m - 1 mm", "1 mm", "cannot subtract a length (1 mm) from a torque (1 N.m)"],
    ["5 kg + 2 + 3 deg", "2", "cannot add a mass (5 kg) and a plain number (2)"],
    ["3 deg + 5 mm", "5 mm", "cannot add an angle (3 deg) and a length (5 mm)"],
    ["54 N.m + 54 J", "54 J", "cannot add a torque (54 N.m) and an energy (54 J)"],
    ["5 turn + 1 flat", "1 flat", "cannot add a count of turns (5 turn) and a count of flats (1 flat)"],
    ["5 kg in N", "N", "cannot convert a mass (5 kg) to N, a force"],
    ["5 kg/mm4 + 1", "1", "cannot add a quantity of length^-4·mass (5 kg/mm4) and a plain number (1)"],
  ])("%s points to %s and names both", (text, operand, message) => {
    const found = fault(text);
    expect(found.code).toBe("wrong-dimension");
    expect(text.slice(found.start, found.end)).toBe(operand);
    expect(found.message).toBe(message);
  });

  test("a bare number beside a quantity is offered its unit, a mass the force", () => {
    expect(fault("54 mm + 3").fixes).toEqual([
      { start: 9, end: 9, text: " mm", title: "Write 3 mm", sure: false },
    ]);
    expect(fault("20 lbf + 3 lb").fixes.map(({ text }) => text)).toEqual(["lbf"]);
    expect(fault("1 N.m + 1 mm").fixes).toEqual([]);
  });

  test("month and year have no fixed number of days", () => {
    expect(fault("5 month in d").message).toContain("no fixed number of days");
  });
});

describe("temperatures", () => {
  test.each([
    ["78 degC - 20 degC", "58 K"],
    ["172 degF - 68 degF", "104 degF"],
    ["20 degC + 58 K", "78 degC"],
    ["78 degC in degF", "172.4 degF"],
    ["mean(20 degC, 30 degC)", "25 degC"],
    ["-10 degC - 5 degC", "-15 K"],
  ])("%s is %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });

  test("two readings have no sum, and no product", () => {
    const sum = fault("78 degC + 20 degC");
    expect(sum.message).toBe(
      "cannot add two temperature readings (78 degC and 20 degC); a difference is written in K",
    );
    expect(shown("78 degC + 20 degC")).toBe("wrong-dimension at 20 degC");
    expect(shown("sum(20 degC, 30 degC)")).toBe("wrong-dimension at 30 degC");
    expect(shown("2 * 20 degC")).toBe("wrong-dimension at 20 degC");
  });
});

describe("unknown units", () => {
  test.each([
    ["40 lb.ft", "lb.ft", "lbf.ft"],
    ["54 nm", "nm", "N.m"],
    ["54 mm in inches", "inches", "in"],
    ["5 gbp", "gbp", "GBP"],
  ])("%s: %s is answered with %s", (text, operand, nearest) => {
    const found = fault(text);
    expect(found.code).toBe("unknown-unit");
    expect(text.slice(found.start, found.end)).toBe(operand);
    expect(found.message).toContain(nearest);
    expect(found.fixes[0]?.text).toBe(nearest);
  });

  test("a fix is sure where nothing else can have been meant", () => {
    expect(fault("54 mm in inches").fixes).toEqual([
      { start: 9, end: 15, text: "in", title: "Write in", sure: true },
    ]);
    expect(fault("54 nm").fixes).toEqual([{ start: 3, end: 5, text: "N.m", title: "Write N.m", sure: true }]);
    expect(fault("5 gallons in l").fixes.map(({ text, sure }) => [text, sure])).toEqual([
      ["imp_gal", false],
      ["us_gal", false],
    ]);
  });

  test("a unit that is near to none has no fix", () => {
    expect(fault("5 furlong")).toMatchObject({ code: "unknown-unit", fixes: [] });
  });
});

describe("money", () => {
  test.each([
    ["62.00 GBP", "62.00 GBP"],
    ["62.00 GBP + 8.50 GBP", "70.50 GBP"],
    ["4 * 62.00 GBP", "248.00 GBP"],
    ["62.00 GBP * 20 %", "12.40 GBP"],
    ["62.00 GBP * 1.175", "72.85 GBP"],
    ["10 GBP / 3", "3.33 GBP"],
    ["0.125 GBP", "0.125 GBP"],
    ["1500 JPY", "1500 JPY"],
    ["62 GBP / 31 GBP", "2"],
    ["62.00 GBP / 4 h", "15.50 GBP/h"],
    ["2 h 30 min * 40 GBP/h", "100.00 GBP"],
    ["40 GBP/h * 2.5 h", "100.00 GBP"],
    ["2.5 h * 40 GBP/h", "100.00 GBP"],
    ["30 min * 40 GBP/h", "20.00 GBP"],
    ["40 GBP/h * 2", "80.00 GBP/h"],
    ["40 GBP/h + 5 GBP/h", "45.00 GBP/h"],
    ["40 GBP/h / 2", "20.00 GBP/h"],
    ["100 GBP / 40 GBP/h", "2.5 h"],
    ["-(62 GBP)", "-62.00 GBP"],
    ["62 GBP in GBP", "62.00 GBP"],
    ["max(62.00 GBP, 58.50 GBP)", "62.00 GBP"],
    ["mean(62.00 GBP, 58.00 GBP)", "60.00 GBP"],
    ["sum(62.00 GBP, 58.00 GBP)", "120.00 GBP"],
    ["round(62.345 GBP, 1)", "62.30 GBP"],
    ["abs(-(62 GBP))", "62.00 GBP"],
  ])("%s is %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });

  test.each([
    ["62 GBP + 5 mm", "wrong-dimension at 5 mm"],
    ["62 GBP + 10 EUR", "wrong-dimension at 10 EUR"],
    ["62 GBP * 10 GBP", "wrong-dimension at 10 GBP"],
    ["62 GBP ^ 2", "wrong-dimension at 2"],
    ["62 GBP / 0", "out-of-range-argument at 0"],
    ["62 GBP in mm", "wrong-dimension at mm"],
    ["62 GBP in pounds", "unknown-unit at pounds"],
    ["40 GBP/h * 3 mm", "wrong-dimension at 3 mm"],
    ["sqrt(4 GBP)", "wrong-dimension at 4 GBP"],
    ["min(4 GBP, 3 EUR)", "wrong-dimension at 3 EUR"],
  ])("%s: %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });

  test("currencies meet at a rate of the build, in whichever direction", () => {
    const [from, to] = ["EUR", "GBP"].map(readCurrency);
    if (typeof from !== "string" || typeof to !== "string") throw new Error("no such currency");
    const rates: ExchangeRate[] = [{ from, to, factor: decimal("0.86") }];
    const at = (text: string) => {
      const calculation = calculate(text, undefined, rates);
      return "fault" in calculation ? calculation.fault.message : formatValue(calculation.value);
    };
    expect(at("62.00 GBP + 10.00 EUR")).toBe("70.60 GBP");
    expect(at("10.00 EUR in GBP")).toBe("8.60 GBP");
    expect(at("8.60 GBP in EUR")).toBe("10.00 EUR");
    expect(at("10 EUR / 8.6 GBP")).toBe("1");
    expect(at("10 EUR in USD")).toBe(
      "cannot bring money (10.00 EUR) to USD: there is no rate from EUR to USD",
    );
  });
});

describe("limits", () => {
  const limits = names({ bore: 'limits_of("52 H7")', shaft: 'limits_of("52 p6")' });

  test.each([
    // ISO 286-2: 52 H7 is +30/0 µm, 52 p6 +51/+32 µm.
    ["bore", "52.000 .. 52.030 mm"],
    ["bore - shaft", "-0.051 .. -0.002 mm"],
    ["bore + 1 mm", "53.000 .. 53.030 mm"],
    ["bore * -1", "-52.03 .. -52.00 mm"],
    ["-bore", "-52.030 .. -52.000 mm"],
    ["bore / 2", "26.000 .. 26.015 mm"],
    ["2 * bore", "104.00 .. 104.06 mm"],
    ["bore in in", "2.04724 .. 2.04843 in"],
    ["bore in m", "0.05200 .. 0.05203 m"],
    ["min(bore)", "52.000 mm"],
    ["max(bore, shaft)", "52.051 mm"],
    ["mean(bore)", "52.015 mm"],
    ["sum(bore, 1 mm)", "53.000 .. 53.030 mm"],
    ["abs(bore - shaft)", "0.002 .. 0.051 mm"],
    ["round(bore, 2)", "52.00 .. 52.03 mm"],
    ["(bore - shaft) ^ 2", "0.000004 .. 0.002601 mm2"],
  ])("%s is %s", (text, expected) => {
    expect(shown(text, limits)).toBe(expected);
  });

  test.each([
    ["bore + 1 N", "wrong-dimension at 1 N"],
    ["1 / (bore - 52.01 mm)", "out-of-range-argument at (bore - 52.01 mm)"],
    ["(bore - 52.01 mm) ^ -1", "out-of-range-argument at (bore - 52.01 mm)"],
    ["2 ^ bore", "wrong-dimension at bore"],
    ["bore in kg", "wrong-dimension at kg"],
    ["sin(bore)", "wrong-dimension at bore"],
    ["torsion_stress(20 N.m, bore, 0 mm)", "wrong-dimension at bore"],
  ])("%s: %s", (text, expected) => {
    expect(shown(text, limits)).toBe(expected);
  });
});

describe("names", () => {
  const build = names({
    "front.left.disc.thickness": "9.12 mm",
    k: "0.18",
    gap: {
      fault: "unknown-name",
      message: "front.left.hub.gap has not been measured yet",
      nearest: ["front.left.hub.runout"],
    },
  });

  test("stand for the values of the build", () => {
    expect(shown("front.left.disc.thickness - 8.4 mm", build)).toBe("0.72 mm");
    expect(shown("preload(24 N.m, M8, k)", build)).toBe(shown("preload(24 N.m, M8, 0.18)"));
  });

  test("that are not known are told, with what the build says of them", () => {
    expect(fault("thickness + 1 mm", build)).toMatchObject({
      code: "unknown-name",
      message: "nothing is called thickness here",
      start: 0,
      end: 9,
    });
    const missing = fault("1 mm + gap", build);
    expect(missing.message).toBe(
      "front.left.hub.gap has not been measured yet; did you mean front.left.hub.runout?",
    );
    expect(missing.fixes).toEqual([
      { start: 7, end: 10, text: "front.left.hub.runout", title: "Write front.left.hub.runout", sure: false },
    ]);
  });
});

describe("values that are not counted", () => {
  test.each([
    ["M10x1.25", "M10x1.25"],
    ["M10x1.25x45", "M10x1.25"],
    ["3/8-24 UNF", "3/8-24 UNF"],
    ["class 8.8", "class 8.8"],
    ["grade 5", "grade 5"],
    ["AWG 14", "AWG 14"],
    ['"52 H7"', "52 H7"],
  ])("%s stands alone", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });

  test.each([
    ['"abc" + 1', 'wrong-dimension at "abc"', 'cannot add the text "abc" and a plain number (1)'],
    ['1 + "abc"', 'wrong-dimension at "abc"', 'cannot add a plain number (1) and the text "abc"'],
    ["M10 - 1 mm", "wrong-dimension at M10", "cannot subtract a length (1 mm) from the thread M10"],
    ["-M10", "wrong-dimension at M10", "a minus does not go before the thread M10"],
    ["class 8.8 * 2", "wrong-dimension at class 8.8", "cannot multiply class 8.8 by a plain number (2)"],
    ["M10 in mm", "wrong-dimension at mm", "the thread M10 cannot be converted to mm"],
    ["class 7.7", "out-of-range-argument at class 7.7", "there is no class 7.7 of bolts"],
    [
      "M10x2",
      "out-of-range-argument at M10x2",
      "no figure for M10x2 (ISO 261); there is M10x1.5, M10x1.25, M10x1, M10x0.75",
    ],
  ])("%s: %s", (text, expected, message) => {
    expect(shown(text)).toBe(expected);
    expect(fault(text).message).toBe(message);
  });
});
