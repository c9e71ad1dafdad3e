import { describe, expect, test } from "vitest";
import { isNumberFault, readNumber } from "../../server/quantities/number.ts";

describe("numbers as written", () => {
  test.each([
    ["12", "12"],
    ["-1.5", "-1.5"],
    ["\u22121.5", "-1.5"],
    ["+0.05", "0.05"],
    ["1e-3", "0.001"],
    ["3/8", "0.375"],
    ["-3/8", "-0.375"],
    ["1-3/8", "1.375"],
    ["1 3/8", "1.375"],
    ["-1-3/8", "-1.375"],
    ["1/3", `0.${"3".repeat(34)}`],
  ])("%s is %s", (text, value) => {
    const read = readNumber(text);
    expect(isNumberFault(read) ? read : read.value.toString()).toBe(value);
  });

  test("white space about it is nothing", () => {
    expect(readNumber(" 12.50 ")).toEqual(readNumber("12.50"));
  });

  test("decimals and figures go along; a fraction has neither and keeps its parts", () => {
    expect(readNumber("9.10")).toMatchObject({ places: 2, figures: 3 });
    const eleven = readNumber("1-3/8");
    expect(eleven).toMatchObject({ places: undefined, figures: undefined });
    expect(isNumberFault(eleven) ? "" : eleven.fraction?.numerator.toString()).toBe("11");
  });

  test("a decimal comma is answered with the point", () => {
    expect(readNumber("9,12")).toEqual({ fault: "decimal-comma", corrected: "9.12", sure: true });
    expect(readNumber("-0,5")).toEqual({ fault: "decimal-comma", corrected: "-0.5", sure: true });
    expect(readNumber("0,125")).toEqual({ fault: "decimal-comma", corrected: "0.125", sure: true });
  });

  test("with three digits behind it a comma may part thousands: offered, not sure", () => {
    expect(readNumber("1,250")).toEqual({ fault: "decimal-comma", corrected: "1.250", sure: false });
    expect(readNumber("1,234,567")).toEqual({ fault: "decimal-comma", corrected: "1234567", sure: false });
    expect(readNumber("1,234.5")).toEqual({ fault: "decimal-comma", corrected: "1234.5", sure: false });
    expect(readNumber("-12,250")).toEqual({ fault: "decimal-comma", corrected: "-12.250", sure: false });
    expect(readNumber("+999,250")).toEqual({ fault: "decimal-comma", corrected: "+999.250", sure: false });
  });

  test("elsewhere the comma is the decimal point for certain", () => {
    for (const text of ["1234,250", "1,25", "1,2500", "012,250", "1,250e3"])
      expect(readNumber(text)).toEqual({
        fault: "decimal-comma",
        corrected: text.replace(",", "."),
        sure: true,
      });
  });

  test("a point needs a digit on both sides", () => {
    expect(readNumber(".5")).toEqual({ fault: "incomplete-number", corrected: "0.5", sure: true });
    expect(readNumber("-5.")).toEqual({ fault: "incomplete-number", corrected: "-5", sure: true });
    expect(readNumber("+.25")).toEqual({ fault: "incomplete-number", corrected: "+0.25", sure: true });
  });

  test.each(["", "abc", "1.2.3", "--1", "1e", "0x10", "Infinity", "NaN", ".", "1 2", "3/", "1/2/3"])(
    "%o is no number",
    (text) => {
      expect(readNumber(text)).toEqual({ fault: "not-a-number" });
    },
  );

  test("nothing is divided by zero, and nothing grows without bound", () => {
    expect(readNumber("3/0")).toEqual({ fault: "zero-denominator" });
    expect(readNumber("1e9999")).toEqual({ fault: "number-too-long" });
    expect(readNumber("1e99")).toHaveProperty("value");
    expect(readNumber("1e-100")).toEqual({ fault: "number-too-long" });
    expect(readNumber("1e100")).toEqual({ fault: "number-too-long" });
    expect(readNumber("9".repeat(120))).toHaveProperty("value");
    expect(readNumber("9".repeat(121))).toEqual({ fault: "number-too-long" });
    expect(readNumber("9".repeat(1000))).toEqual({ fault: "number-too-long" });
  });
});
