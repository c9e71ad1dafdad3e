import fc from "fast-check";
import { all, create } from "mathjs";
import { describe, expect, test } from "vitest";
import { calculate, calculationObject } from "../../server/expressions/calculation.ts";
import { functionNames } from "../../server/expressions/function-names.ts";
import { equal } from "../../server/quantities/quantity.ts";
import { unitsOf } from "../../server/quantities/unit.ts";
import { quantity, shown, value } from "./calculated.ts";

/** Numbers as a gauge or a bill gives them. */
const decimals = fc
  .tuple(fc.integer({ min: -999_999, max: 999_999 }), fc.integer({ min: 0, max: 4 }))
  .map(([digits, places]) => (digits / 10 ** places).toFixed(places));

const dimensions = ["length", "torque", "pressure", "force", "mass", "volume", "angle", "speed"] as const;
const unitPairs = fc.constantFrom(...dimensions).chain((dimension) => {
  const units = unitsOf(dimension);
  return fc.tuple(fc.constantFrom(...units), fc.constantFrom(...units));
});

/** A number with a sign, in parentheses that are still open for its unit. */
function signed(text: string): string {
  return `(${text}`;
}

describe("laws of the language", () => {
  test("sums in one unit are exact: in any order and grouping the same", () => {
    fc.assert(
      fc.property(decimals, decimals, decimals, fc.constantFrom("mm", "in", "N.m", "kg"), (a, b, c, unit) => {
        const [x, y, z] = [a, b, c].map((each) => `${signed(each)} ${unit})`);
        expect(shown(`(${x} + ${y}) + ${z}`)).toBe(shown(`${x} + (${y} + ${z})`));
        expect(shown(`${x} + ${y}`)).toBe(shown(`${y} + ${x}`));
        expect(shown(`${x} + ${y} - ${y} - ${x}`)).toMatch(/^0(\.0+)? /);
      }),
    );
  });

  test("multiplication goes over addition in one unit", () => {
    fc.assert(
      fc.property(decimals, decimals, decimals, (a, b, c) => {
        const [x, y] = [a, b].map((each) => `${signed(each)} mm)`);
        const factor = `${signed(c)})`;
        expect(
          equal(quantity(`${factor} * (${x} + ${y})`), quantity(`${factor} * ${x} + ${factor} * ${y}`)),
        ).toBe(true);
      }),
    );
  });

  test("a conversion there and back gives the same to 30 digits", () => {
    fc.assert(
      fc.property(decimals, unitPairs, (number, [from, to]) => {
        fc.pre(Number(number) !== 0);
        const written = quantity(`${signed(number)} ${from})`);
        const back = quantity(`(${signed(number)} ${from}) in ${to}) in ${from}`);
        expect(back.unit.symbol).toBe(written.unit.symbol);
        expect(back.value.minus(written.value).div(written.value).abs().toNumber()).toBeLessThan(1e-30);
      }),
    );
  });

  test("what is printed in full reads as the same value", () => {
    fc.assert(
      fc.property(decimals, fc.constantFrom("mm", "deg", "lbf.ft", "%", "degC"), (number, unit) => {
        const written = `${signed(number)} ${unit})`;
        const again = shown(written);
        expect(equal(quantity(again), quantity(written))).toBe(true);
      }),
    );
  });

  test("limits hold every result of values within them", () => {
    const bounds = fc.tuple(decimals, decimals).map(([a, b]) => (Number(a) <= Number(b) ? [a, b] : [b, a]));
    const share = fc.integer({ min: 0, max: 100 });
    const operators = fc.constantFrom("+", "-", "*", "/");
    fc.assert(
      fc.property(bounds, bounds, share, share, operators, ([a, b], [c, d], s, t, operator) => {
        fc.pre(operator !== "/" || Number(c) > 0 || Number(d) < 0);
        const names = new Map([
          ["first", limitsFrom(a, b)],
          ["second", limitsFrom(c, d)],
        ]);
        const whole = value(`first ${operator} second`, (name) => names.get(name));
        const inside = quantity(`${within(a, b, s)} ${operator} ${within(c, d, t)}`).value;
        const rounding = inside.abs().times("1e-30");
        expect(whole.kind).toBe("limits");
        const [lower, upper] = whole.kind === "limits" ? [whole.lower.value, whole.upper.value] : [];
        expect(lower?.lessThanOrEqualTo(inside.plus(rounding))).toBe(true);
        expect(upper?.greaterThanOrEqualTo(inside.minus(rounding))).toBe(true);
      }),
    );
  });

  test("limits that hold zero divide nothing", () => {
    expect(shown("1 mm / second", () => limitsFrom("-1", "2"))).toBe("out-of-range-argument at second");
    expect(shown("1 mm / second", () => limitsFrom("0", "2"))).toBe("out-of-range-argument at second");
    expect(shown("1 mm / second", () => limitsFrom("-2", "0"))).toBe("out-of-range-argument at second");
  });
});

function limitsFrom(lower = "0", upper = "0") {
  const [low, high] = [lower, upper].map((each) => quantity(`${signed(each)} mm)`));
  if (low === undefined || high === undefined) throw new Error("two bounds are due");
  return { kind: "limits", lower: low, upper: high } as const;
}

/** A length between two others, at a share in percent of the way. */
function within(lower = "0", upper = "0", share = 0): string {
  const [low, high] = [lower, upper].map((each) => `${signed(each)} mm)`);
  return `(${low} + (${high} - ${low}) * ${share} / 100)`;
}

describe("against a general-purpose calculator", () => {
  // The decimals and the parser of mathjs, in the tests only, evaluate the same text of bare numbers.
  const calculator = create(all ?? {}, { number: "BigNumber", precision: 34 });
  /** A text, and a number that is at least its size and that of its reciprocal. */
  type Operand = readonly [text: string, size: number];
  const sizeOf = (number: number) => (number === 0 ? 1 : Math.max(Math.abs(number), 1 / Math.abs(number)));
  const called = ["sqrt(2.25)", "abs(-3)", "max(1, 2)", "min(4, 5, 3)", "round(2.71828, 2)", "mean(1, 2)"];
  const operand = fc.oneof(
    decimals.map((number): Operand => [`${signed(number)})`, sizeOf(Number(number))]),
    fc.constantFrom(...called.map((text): Operand => [text, 3])),
  );
  const expression = fc
    .tuple(
      operand,
      fc.array(fc.tuple(fc.constantFrom(" + ", " - ", " * ", " / "), operand), {
        minLength: 1,
        maxLength: 6,
      }),
    )
    .map(([first, rest]) => ({
      text: first[0] + rest.map(([operator, [next]]) => operator + next).join(""),
      // No intermediate result is larger than this.
      size: rest.reduce((size, [, [, next]]) => size * next + next, first[1]),
    }));

  test("expressions of bare numbers give the same, but for the last of 34 digits", () => {
    fc.assert(
      fc.property(expression, ({ text, size }) => {
        fc.pre(!/ \/ \(-?0(\.0+)?\)/.test(text));
        const theirs = Number(calculator.evaluate(text).toString());
        expect(Math.abs(quantity(text).value.toNumber() - theirs)).toBeLessThanOrEqual(
          1e-30 * size + 1e-15 * Math.abs(theirs),
        );
      }),
      { numRuns: 200 },
    );
  });

  test("whole powers give the same", () => {
    fc.assert(
      fc.property(decimals, fc.integer({ min: 0, max: 12 }), (base, exponent) => {
        const text = `${signed(base)}) ^ ${exponent}`;
        const theirs = calculator.evaluate(text).toString();
        expect(quantity(text).value.toNumber()).toBe(Number(theirs));
      }),
    );
  });
});

describe("any text at all", () => {
  const pieces = [
    ..."()+-*/^,.\"'%°µ×=[]{}:;!\\ \n\t",
    "1",
    "0",
    "2.5",
    "1e99",
    "1e-99",
    "3/8",
    "1-3/8",
    "mm",
    "in",
    "N.m",
    "lbf.ft",
    "degC",
    "K",
    "deg",
    "GBP",
    "EUR",
    "GBP/h",
    "h",
    "month",
    "turn",
    " in ",
    "M10x1.25",
    "3/8-24 UNF",
    "class 8.8",
    "grade 5",
    "AWG 14",
    '"52 H7"',
    '"185/70R13"',
    "steel",
    "oiled",
    "front.left.disc",
    "constructor",
    "__proto__",
    ...functionNames.map((name) => `${name}(`),
  ];
  const soup = fc.array(fc.constantFrom(...pieces), { maxLength: 25 }).map((words) => words.join(""));

  /** What is wrong with the answer to a text: nothing, where it is a finite result or a complaint within the text. */
  function wrongWith(text: string): readonly string[] {
    const calculation = calculate(text);
    const object = calculationObject(calculation);
    const wrong: string[] = [];
    if (JSON.stringify(object) !== JSON.stringify(JSON.parse(JSON.stringify(object)))) wrong.push("not JSON");
    if ("fault" in calculation) {
      const { message, start, end } = calculation.fault;
      if (message === "") wrong.push("no message");
      if (start < 0 || end < start || end > text.length) wrong.push("not within the text");
    } else {
      const { value } = calculation;
      const ends =
        value.kind === "quantity"
          ? [value.quantity]
          : value.kind === "limits"
            ? [value.lower, value.upper]
            : [];
      if (!ends.every((end) => Number.isFinite(end.value.toNumber()))) wrong.push("not finite");
    }
    return wrong;
  }

  test("of words of the language is a finite result or a complaint within it", () => {
    fc.assert(
      fc.property(soup, (text) => {
        expect(wrongWith(text)).toEqual([]);
      }),
      { numRuns: 800 },
    );
  });

  test("of any characters too", () => {
    const text = fc.oneof(
      fc.string({ unit: "grapheme", maxLength: 40 }),
      fc.string({ unit: "binary-ascii", maxLength: 60 }),
    );
    fc.assert(
      fc.property(text, (written) => {
        expect(wrongWith(written)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  test("of calls with arguments of any kind too", () => {
    const argument = fc.constantFrom(
      "1",
      "-3",
      "0",
      "0.2",
      "60 %",
      "54 N.m",
      "10 mm",
      "1e99 mm",
      "-5 mm",
      "1e-99 kg",
      "20 degC",
      "60 K",
      "3000 rpm",
      "12 V",
      "11 A",
      "40 bar",
      "20 kN",
      "79 GPa",
      "20 deg",
      "2.5 mm2",
      "250 cc",
      "62 GBP",
      "40 GBP/h",
      "M10",
      "3/8 BSF",
      "class 8.8",
      "class unknown",
      "grade 5",
      "steel",
      "rubber",
      "oiled",
      "threadlocker",
      "AWG 14",
      '"52 H7"',
      '"52 H7/p6"',
      '"IT7"',
      '""',
      'limits_of("52 H7")',
    );
    const call = fc
      .tuple(fc.constantFrom(...functionNames), fc.array(argument, { maxLength: 8 }))
      .map(([name, given]) => `${name}(${given.join(", ")})`);
    fc.assert(
      fc.property(call, (text) => {
        expect(wrongWith(text)).toEqual([]);
      }),
      { numRuns: 1000 },
    );
  });
});
