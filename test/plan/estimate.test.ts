import { describe, expect, test } from "vitest";
import { remainingEstimate, singleEstimate, threePointEstimate } from "../../server/plan/estimate.ts";
import type { Hours } from "../../server/plan/hours.ts";
import { decimal } from "../../server/quantities/decimal.ts";

function ratio({ numerator, denominator }: Hours): string {
  return denominator === 1n ? `${numerator}` : `${numerator}/${denominator}`;
}

describe("an estimate of three points", () => {
  test("has its mean and variance exactly", () => {
    const { mean, variance } = threePointEstimate(4, 6, 10);
    // (4 + 24 + 10) / 6 = 38/6; ((10 - 4) / 6)² = 1.
    expect([ratio(mean), ratio(variance)]).toEqual(["19/3", "1"]);
  });

  test("reads decimals as written", () => {
    const { mean, variance } = threePointEstimate(decimal("1.5"), decimal("2"), decimal("3.3"));
    // (1.5 + 8 + 3.3) / 6 = 12.8/6; (1.8 / 6)² = 0.09.
    expect([ratio(mean), ratio(variance)]).toEqual(["32/15", "9/100"]);
  });
});

describe("what remains of an estimate", () => {
  test("is the mean less what was worked, its deviation in proportion", () => {
    // Mean 6, variance ((10 - 2) / 6)² = 16/9; 4.5 h worked leave a quarter of the mean, so 16/9/16 of the variance.
    const { mean, variance } = remainingEstimate(threePointEstimate(2, 6, 10), decimal("4.5"));
    expect([ratio(mean), ratio(variance)]).toEqual(["3/2", "1/9"]);
  });

  test("is all of it before anything was worked", () => {
    const whole = threePointEstimate(2, 6, 10);
    expect(remainingEstimate(whole, 0)).toEqual(whole);
  });

  test.each([6, 7, 600])("is nothing after %d of 6 hours", (worked) => {
    const { mean, variance } = remainingEstimate(threePointEstimate(2, 6, 10), worked);
    expect([ratio(mean), ratio(variance)]).toEqual(["0", "0"]);
  });

  test("of no time at all is nothing", () => {
    expect(ratio(remainingEstimate(singleEstimate(0), 0).mean)).toBe("0");
  });
});
