import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decimal } from "../../server/quantities/decimal.ts";
import type { DimensionName } from "../../server/quantities/dimension.ts";
import {
  compatible,
  dimensionNamed,
  dimensionNames,
  multiplyDimensions,
  powerDimension,
  RATIO,
  rootDimension,
  sameExponents,
} from "../../server/quantities/dimension.ts";
import type { Limits } from "../../server/quantities/limits.ts";
import { readNumber } from "../../server/quantities/number.ts";
import type { Quantity } from "../../server/quantities/quantity.ts";
import {
  add,
  compare,
  convert,
  divide,
  equal,
  formatQuantity,
  multiply,
  negate,
  quantity,
  quantityOf,
  subtract,
} from "../../server/quantities/quantity.ts";
import { readUnit, unit, unitsOf } from "../../server/quantities/unit.ts";
import type { VerdictName } from "../../server/quantities/verdict.ts";
import { judge } from "../../server/quantities/verdict.ts";
import { ok } from "./written.ts";

const dimension = fc.constantFrom(...dimensionNames).map(dimensionNamed);

/** A decimal as somebody writes it: up to nine digits, up to four of them behind the point. */
const written = fc
  .tuple(fc.integer({ min: -999_999_999, max: 999_999_999 }), fc.integer({ min: 0, max: 4 }))
  .map(([digits, places]) => decimal(digits).div(decimal(10).pow(places)).toString());

const LINEAR: readonly DimensionName[] = [
  "length",
  "force",
  "torque",
  "pressure",
  "mass",
  "volume",
  "stiffness",
  "angle",
];
/** Two units of one dimension, all with rational factors. */
const unitPair = fc
  .constantFrom(...LINEAR)
  .chain((name) => fc.tuple(fc.constantFrom(...unitsOf(name)), fc.constantFrom(...unitsOf(name))))
  .filter(([from, to]) => from !== "rad" && to !== "rad");

const inUnit = (text: string) => written.map((value) => ok(quantity(value, text)));
const millimetres = inUnit("mm");

describe("dimensions form a group under multiplication", () => {
  test("the order does not matter, the plain number changes nothing, and each has an inverse", () => {
    fc.assert(
      fc.property(dimension, dimension, dimension, (a, b, c) => {
        expect(multiplyDimensions(a, b)).toBe(multiplyDimensions(b, a));
        expect(
          sameExponents(
            multiplyDimensions(multiplyDimensions(a, b), c),
            multiplyDimensions(a, multiplyDimensions(b, c)),
          ),
        ).toBe(true);
        expect(multiplyDimensions(a, RATIO)).toBe(a);
        expect(multiplyDimensions(a, powerDimension(a, -1))).toBe(RATIO);
      }),
    );
  });

  test("powers add, and the root undoes the square", () => {
    fc.assert(
      fc.property(dimension, fc.integer({ min: -3, max: 3 }), fc.integer({ min: -3, max: 3 }), (a, m, n) => {
        expect(
          sameExponents(
            multiplyDimensions(powerDimension(a, m), powerDimension(a, n)),
            powerDimension(a, m + n),
          ),
        ).toBe(true);
        const root = rootDimension(powerDimension(a, 2));
        expect(root !== undefined && sameExponents(root, a)).toBe(true);
      }),
    );
  });

  test("compatibility is mutual and holds of each with itself; torque and energy are never", () => {
    fc.assert(
      fc.property(dimension, dimension, (a, b) => {
        expect(compatible(a, a)).toBe(true);
        expect(compatible(a, b)).toBe(compatible(b, a));
      }),
    );
    expect(compatible(dimensionNamed("torque"), dimensionNamed("energy"))).toBe(false);
  });
});

describe("arithmetic", () => {
  test("addition commutes and undoes subtraction, exactly, in one unit", () => {
    fc.assert(
      fc.property(millimetres, millimetres, (a, b) => {
        expect(equal(ok(add(a, b)), ok(add(b, a)))).toBe(true);
        expect(equal(ok(subtract(ok(add(a, b)), b)), a)).toBe(true);
        expect(equal(ok(add(a, negate(a))), quantityOf(0, unit("mm")))).toBe(true);
      }),
    );
  });

  test("addition commutes across units, to the last of 33 digits", () => {
    fc.assert(
      fc.property(unitPair, written, written, ([from, to], x, y) => {
        const [a, b] = [ok(quantity(x, from)), ok(quantity(y, to))];
        const [left, right] = [ok(add(a, b)), ok(convert(ok(add(b, a)), a.unit))];
        const scale = a.value.abs().plus(ok(convert(b, a.unit)).value.abs());
        expect(left.value.minus(right.value).abs().lessThanOrEqualTo(scale.times("1e-32"))).toBe(true);
      }),
    );
  });

  test("a product divided by one factor is the other", () => {
    const factor = fc.tuple(fc.constantFrom("mm", "N", "in", "bar", "psi", "A", "s", "lbf"), written);
    fc.assert(
      fc.property(factor, factor, ([unitA, x], [unitB, y]) => {
        fc.pre(!decimal(y).isZero());
        const [a, b] = [ok(quantity(x, unitA)), ok(quantity(y, unitB))];
        const back = ok(convert(ok(divide(ok(multiply(a, b)), b)), a.unit));
        expect(back.value.minus(a.value).abs().lessThanOrEqualTo(a.value.abs().times("1e-31"))).toBe(true);
      }),
    );
  });
});

describe("conversion", () => {
  test("there and back gives what was written, to the last of 33 digits", () => {
    fc.assert(
      fc.property(unitPair, written, ([from, to], value) => {
        const start = ok(quantity(value, from));
        const back = ok(convert(ok(convert(start, unit(to))), start.unit));
        expect(back.value.toSignificantDigits(32).equals(start.value)).toBe(true);
      }),
    );
  });

  test("into a finer unit of the same system it is exact both ways", () => {
    const finer = fc.constantFrom(
      ["in", "thou"],
      ["ft", "in"],
      ["m", "µm"],
      ["deg", "arcsec"],
      ["lb", "oz"],
      ["in", "mm"],
    );
    fc.assert(
      fc.property(finer, written, ([coarse = "", fine = ""], value) => {
        const start = ok(quantity(value, coarse));
        const there = ok(convert(start, unit(fine)));
        expect(compare(there, start)).toBe(0);
        expect(ok(convert(there, start.unit)).value.equals(start.value)).toBe(true);
      }),
    );
  });

  test("keeps order", () => {
    fc.assert(
      fc.property(unitPair, written, written, ([from, to], x, y) => {
        const [a, b] = [ok(quantity(x, from)), ok(quantity(y, from))];
        expect(compare(ok(convert(a, unit(to))), ok(convert(b, unit(to))))).toBe(compare(a, b));
      }),
    );
  });
});

describe("reading what was printed", () => {
  test("gives the same value for whatever was written in full", () => {
    fc.assert(
      fc.property(unitPair, written, ([from], value) => {
        const start = ok(quantity(value, from));
        const [number = "", symbol = ""] = formatQuantity(start)
          .replace(/([°'])$/, " $1")
          .split(" ");
        expect(equal(ok(quantity(number, symbol)), start)).toBe(true);
      }),
    );
  });

  test("no text breaks the readers", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        expect(() => [readNumber(text), readUnit(text)]).not.toThrow();
      }),
    );
    fc.assert(
      fc.property(fc.stringMatching(/^[a-zA-Z.·/^0-9°'%µ_ ]{0,12}$/), (text) => {
        expect(() => readUnit(text)).not.toThrow();
      }),
    );
  });
});

describe("verdicts", () => {
  const size = fc
    .integer({ min: 0, max: 2000 })
    .map((hundredths) => quantityOf(decimal(hundredths).div(100), unit("mm")));
  const limits = fc
    .tuple(size, size)
    .map(([a, b]): Limits => (compare(a, b) === 1 ? { lower: b, upper: a } : { lower: a, upper: b }));
  const RANK: Readonly<Record<VerdictName, number>> = { within: 0, near: 1, uncertain: 2, outside: 3 };
  const verdictOf = (reading: Quantity, U: Quantity, within: Limits, near = 0.1) =>
    ok(judge([reading], U, within, near)).verdict;
  /** Near tells how much is left of a zone, which widening changes: the decision rule alone is without it. */
  const decision = (reading: Quantity, U: Quantity, within: Limits) => RANK[verdictOf(reading, U, within, 0)];

  test("wider limits never make a verdict worse", () => {
    fc.assert(
      fc.property(size, size, limits, size, size, (reading, U, { lower, upper }, down, up) => {
        fc.pre(lower !== undefined && upper !== undefined);
        if (lower === undefined || upper === undefined) return;
        const wider = { lower: ok(subtract(lower, down)), upper: ok(add(upper, up)) };
        expect(decision(reading, U, wider)).toBeLessThanOrEqual(decision(reading, U, { lower, upper }));
      }),
    );
  });

  test("more uncertainty never proves anything", () => {
    fc.assert(
      fc.property(size, size, size, limits, (reading, U, more, within) => {
        const [before, after] = [verdictOf(reading, U, within), verdictOf(reading, ok(add(U, more)), within)];
        expect([before, "uncertain"]).toContain(after);
        expect(before === "uncertain" && after !== "uncertain").toBe(false);
      }),
    );
  });

  test("without uncertainty it is the plain comparison", () => {
    fc.assert(
      fc.property(size, limits, (reading, within) => {
        const inside = [
          within.lower && compare(within.lower, reading) !== 1,
          within.upper && compare(reading, within.upper) !== 1,
        ];
        const verdict = ok(judge([reading], undefined, within, 0)).verdict;
        expect(verdict).toBe(inside.every(Boolean) ? "within" : "outside");
      }),
    );
  });

  test("is the same in whatever unit the reading, its uncertainty and the limits are written", () => {
    const text = fc.constantFrom("mm", "in", "thou", "µm", "m");
    const rewritten = (q: Quantity | undefined, to: string) =>
      q === undefined ? q : ok(convert(q, unit(to)));
    const exact = fc
      .integer({ min: 0, max: 200 })
      .map((count) => quantityOf(decimal(count).times("25.4"), unit("mm")));
    const span = fc
      .tuple(exact, exact)
      .map(([a, b]) => (compare(a, b) === 1 ? [b, a] : [a, b]) as [Quantity, Quantity]);
    fc.assert(
      fc.property(exact, exact, span, text, text, text, (reading, U, [lower, upper], a, b, c) => {
        const here = verdictOf(reading, U, { lower, upper });
        const [low, high] = [rewritten(lower, c) ?? lower, rewritten(upper, c) ?? upper];
        const there = verdictOf(rewritten(reading, a) ?? reading, rewritten(U, b) ?? U, {
          lower: low,
          upper: high,
        });
        expect(there).toBe(here);
      }),
    );
  });

  test("of several readings it is the verdict of the one with the least margin", () => {
    fc.assert(
      fc.property(fc.array(size, { minLength: 1, maxLength: 6 }), size, limits, (readings, U, within) => {
        const [first, ...others] = readings;
        if (first === undefined) return;
        const all = ok(judge([first, ...others], U, within, 0.1));
        for (const reading of readings) {
          expect(compare(all.margin, ok(judge([reading], U, within, 0.1)).margin)).not.toBe(1);
        }
        expect(all.verdict).toBe(verdictOf(all.reading, U, within));
      }),
    );
  });
});
