import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Expected } from "../../server/trade/identification/candidate.ts";
import { fitOf, jointMisfit, scoreOf } from "../../server/trade/identification/misfit.ts";

const MM = 0.001;

/** A bolt of 9.8 to 10 mm that wear may take a tenth of a millimetre off. */
const bolt: Expected = {
  nominal: 10 * MM,
  lower: 9.8 * MM,
  upper: 10 * MM,
  worn: { side: "smaller", by: 0.1 * MM },
};

const at = (millimetres: number, uncertainty = 0.05) => fitOf(millimetres * MM, uncertainty * MM, bolt);

describe("the misfit of one dimension", () => {
  test("is nothing within the limits of a new part", () => {
    expect([9.8, 9.9, 10].map((each) => at(each).misfit)).toEqual([0, 0, 0]);
    expect(at(9.9).state).toBe("as made");
  });

  test("is one where the allowance ends: the uncertainty, and on the worn side the wear behind it", () => {
    expect(at(10.05).misfit).toBeCloseTo(1, 9);
    expect(at(9.65).misfit).toBeCloseTo(1, 9);
    expect(at(9.75).misfit).toBeCloseTo(0.5, 9);
  });

  test.each([
    [9.77, "within the uncertainty"],
    [9.7, "worn"],
    [9.64, "outside"],
    [10.04, "within the uncertainty"],
    [10.06, "outside"],
  ])("%d mm is %s", (measured, state) => {
    expect(at(measured).state).toBe(state);
  });

  test("says how far beyond the limits of a new part it lies, and on which side", () => {
    expect(at(9.7).beyond).toBeCloseTo(-0.1 * MM, 9);
    expect(at(10.06).beyond).toBeCloseTo(0.06 * MM, 9);
  });

  test("grows with the distance, on either side, without a jump but for a hair", () => {
    const length = fc.double({ min: 0, max: 2, noNaN: true });
    const side = fc.constantFrom(-1, 1);
    fc.assert(
      fc.property(
        length,
        length,
        side,
        fc.double({ min: 0.001, max: 0.5, noNaN: true }),
        (one, other, sign, u) => {
          const distances = [one, other].sort((a, b) => a - b);
          const misfits = distances.map(
            (distance) => at(sign > 0 ? 10 + distance : 9.8 - distance, u).misfit,
          );
          const [near = 0, far = 0] = misfits;
          const step = (distances[1] ?? 0) - (distances[0] ?? 0);
          expect(far).toBeGreaterThanOrEqual(near - 1e-9);
          // The steepest stretch is that of the uncertainty or of the wear. A billionth of the size is no distance yet,
          // and the misfit begins with what that is of the uncertainty.
          const hair = (1e-9 * 10) / u;
          expect(far - near).toBeLessThanOrEqual(step * Math.max(1 / u, 1 / 0.1) + hair + 1e-9);
        },
      ),
    );
  });
});

describe("the score", () => {
  test("is one as made, a half at the end of every allowance", () => {
    expect(scoreOf(jointMisfit([0, 0, 0]), true)).toBe(1);
    expect(scoreOf(jointMisfit([1, 1, 1]), true)).toBe(0.5);
  });

  test("falls as any one misfit grows, and is less than a half where something does not fit", () => {
    const misfit = fc.double({ min: 0, max: 20, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(misfit, { minLength: 1, maxLength: 5 }),
        fc.nat(4),
        misfit,
        (misfits, place, more) => {
          const worse = misfits.map((each, index) => (index === place % misfits.length ? each + more : each));
          const score = (each: readonly number[]) => scoreOf(jointMisfit(each), Math.max(...each) <= 1);
          expect(score(worse)).toBeLessThanOrEqual(score(misfits) + 1e-12);
          expect(score(misfits) >= 0.5).toBe(Math.max(...misfits) <= 1);
        },
      ),
    );
  });
});
