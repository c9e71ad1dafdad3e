/** Exact ratios, by which units are converted and verdicts decided. */
import { describe, expect, test } from "vitest";
import {
  addRational,
  compareRational,
  multiplyRational,
  powerRational,
  rational,
} from "../../server/quantities/rational.ts";

const of = (numerator: bigint, denominator: bigint) => ({ numerator, denominator });

describe("a ratio as it is written", () => {
  test.each([
    ["25.4", 127n, 5n],
    ["-0.5", -1n, 2n],
    ["1e-3", 1n, 1000n],
    ["1e+3", 1000n, 1n],
    ["2e12", 2_000_000_000_000n, 1n],
    ["2.5e1", 25n, 1n],
    ["5/9", 5n, 9n],
    ["0.45359237*9.80665", 8_896_443_230_521n, 2_000_000_000_000n],
    [" 5 / 9 ", 5n, 9n],
    ["8/2/2", 2n, 1n],
  ])("%s is %s over %s, in lowest terms", (text, numerator, denominator) => {
    expect(rational(text)).toEqual(of(numerator, denominator));
  });

  test.each(["x5", "5x", "1e", "1e3.5", "1.", ".5", "5 9"])("%s is none", (text) => {
    expect(() => rational(text)).toThrow(`not a factor: ${text}`);
  });
});

describe("arithmetic", () => {
  test("keeps lowest terms and the sign above the line", () => {
    expect(multiplyRational(of(2n, 3n), of(3n, -4n))).toEqual(of(-1n, 2n));
    expect(addRational(of(1n, 2n), of(-1n, 3n))).toEqual(of(1n, 6n));
    expect(addRational(of(1n, 2n), of(-1n, 2n))).toEqual(of(0n, 1n));
  });

  test("powers, negative ones included", () => {
    expect(powerRational(of(2n, 3n), 2)).toEqual(of(4n, 9n));
    expect(powerRational(of(-2n, 3n), -1)).toEqual(of(-3n, 2n));
    expect(powerRational(of(2n, 3n), 0)).toEqual(of(1n, 1n));
  });

  test("compares by cross multiplication", () => {
    expect(compareRational(of(1n, 3n), of(2n, 6n))).toBe(0);
    expect(compareRational(of(1n, 3n), of(1n, 2n))).toBe(-1);
    expect(compareRational(of(1n, 2n), of(1n, 3n))).toBe(1);
    expect(compareRational(of(-1n, 2n), of(1n, 3n))).toBe(-1);
  });
});
