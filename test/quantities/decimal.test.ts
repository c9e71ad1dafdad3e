import { describe, expect, test } from "vitest";
import {
  compareProducts,
  decimal,
  decimalPlaces,
  formatDecimal,
  formatSignificant,
  roundToSignificant,
  scale,
  significantFigures,
} from "../../server/quantities/decimal.ts";

describe("decimals", () => {
  test("a tenth and two tenths are three tenths", () => {
    expect(decimal("0.1").plus("0.2").equals("0.3")).toBe(true);
    expect(decimal(0.1).plus(0.2).equals("0.3")).toBe(true);
  });

  test("34 significant digits, as IEEE 754 decimal128", () => {
    expect(decimal(1).div(3).toString()).toBe(`0.${"3".repeat(34)}`);
    expect(decimal(`1.${"0".repeat(40)}1`).toString()).toBe("1");
    expect(decimal(10n ** 33n + 1n).toFixed(0)).toBe(`1${"0".repeat(32)}1`);
  });

  test("halves round to even", () => {
    expect(roundToSignificant(decimal("2.5"), 1).toString()).toBe("2");
    expect(roundToSignificant(decimal("3.5"), 1).toString()).toBe("4");
    expect(roundToSignificant(decimal("-0.125"), 2).toString()).toBe("-0.12");
    expect(decimal("0.5").toDecimalPlaces(0).toString()).toBe("0");
  });

  test("a factor with an endless quotient is rounded once, and says so", () => {
    const third = scale(decimal(1), decimal(1), decimal(3));
    expect(third.exact).toBe(false);
    expect(scale(decimal(3), decimal(1), decimal(3))).toMatchObject({ exact: true });
    expect(scale(decimal("0.375"), decimal("25.4"), decimal(1)).value.toString()).toBe("9.525");
  });

  test("products are compared without rounding", () => {
    const nearlyOne = decimal(`0.${"9".repeat(34)}`);
    expect(compareProducts(nearlyOne, decimal(3), decimal(1), decimal(3))).toBe(-1);
    expect(compareProducts(decimal(1), decimal("25.4"), decimal("25.4"), decimal(1))).toBe(0);
  });
});

describe("figures as written", () => {
  test.each([
    ["9.12", 3, 2],
    ["9.10", 3, 2],
    ["0.05", 1, 2],
    ["-1.5", 2, 1],
    ["1200", 4, 0],
    ["1e-3", 1, 3],
    ["2.50e2", 3, 0],
    ["2.505e2", 4, 1],
    ["1e-12", 1, 12],
    [" 9.10 ", 3, 2],
    ["0", 1, 0],
    ["0.00", 2, 2],
  ])("%s has %i significant figures and %i decimals", (text, figures, places) => {
    expect(significantFigures(text)).toBe(figures);
    expect(decimalPlaces(text)).toBe(places);
  });
});

test.each(["1.2.3", "1.25x", "x1.25.5", "1e5e5"])("%s is no number, so it has no decimals", (text) => {
  expect(decimalPlaces(text)).toBe(0);
});

describe("printed decimals", () => {
  test.each([
    ["0.000001", "0.000001"],
    ["123456789012345678901", "123456789012345678901"],
    ["1e30", "1e+30"],
    ["1e-12", "0.000000000001"],
    ["1e-13", "1e-13"],
    ["1e20", "100000000000000000000"],
    ["1e21", "1e+21"],
    ["-0.5", "-0.5"],
    ["0", "0"],
  ])("%s prints as %s", (value, text) => {
    expect(formatDecimal(decimal(value))).toBe(text);
  });

  test("with the decimals it was written with", () => {
    expect(formatDecimal(decimal("9.1"), 2)).toBe("9.10");
    expect(formatDecimal(decimal("9.125"), 2)).toBe("9.125");
    expect(formatDecimal(decimal(0), 2)).toBe("0.00");
  });

  test("with significant figures, the zeros at the end included", () => {
    expect(formatSignificant(decimal("54.2327"), 3)).toBe("54.2");
    expect(formatSignificant(decimal("38.998"), 3)).toBe("39.0");
    expect(formatSignificant(decimal("27012"), 3)).toBe("27000");
    expect(formatSignificant(decimal("0.00999951"), 3)).toBe("0.0100");
    expect(formatSignificant(decimal(0), 3)).toBe("0");
  });
});
