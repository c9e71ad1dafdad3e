import { describe, expect, test } from "vitest";
import { MAX_DEPTH, MAX_TOKENS } from "../../grammar/expression-parser.ts";
import type { Expression } from "../../grammar/syntax.ts";
import { calculate, calculationLines, calculationObject } from "../../server/expressions/calculation.ts";
import { evaluate } from "../../server/expressions/evaluate.ts";
import type { ExpressionFaultCode } from "../../server/expressions/refusal.ts";
import { fault } from "./calculated.ts";

/** What an attacker or an accident may type, and the complaint that is due. */
const attacks: readonly (readonly [string, ExpressionFaultCode])[] = [
  // Powers and sizes that would eat the machine.
  ["9^9^9^9", "out-of-range-argument"],
  ["9^9^9^9^9^9^9^9^9^9", "out-of-range-argument"],
  ["(((9^999)^999)^999)^999", "out-of-range-argument"],
  ["10^-1000 * 10^-1000", "out-of-range-argument"],
  ["1e99^3 * 1e99", "out-of-range-argument"],
  ["1e999", "unreadable-expression"],
  ["1e-999", "unreadable-expression"],
  [`1${"0".repeat(5000)}`, "unreadable-expression"],
  [`0.${"0".repeat(5000)}1`, "unreadable-expression"],
  ["1e99 km * 1e99 km * 1e99 km * 1e99 km", "out-of-range-argument"],
  ["(1 mm)^12 * (1 mm)^12", "out-of-range-argument"],
  ["2^0.1^-1e9", "out-of-range-argument"],
  ["0^-1", "out-of-range-argument"],
  ["1/0", "out-of-range-argument"],
  ["1 mm / (3 mm - 3 mm)", "out-of-range-argument"],
  ["0/0", "out-of-range-argument"],
  ["preload(1e300 N.m, M10, 0.2)", "unreadable-expression"],
  ["preload(1e99 * 1e99 * 1e99 * 1 N.m, M10, 0.2)", "out-of-range-argument"],
  ["round(1, 1e99)", "out-of-range-argument"],
  // Nesting and length.
  [`${"(".repeat(100_000)}1${")".repeat(100_000)}`, "unreadable-expression"],
  [`${"-".repeat(100_000)}1`, "unreadable-expression"],
  [`${"abs(".repeat(MAX_DEPTH + 1)}1${")".repeat(MAX_DEPTH + 1)}`, "unreadable-expression"],
  [`1${"^1".repeat(MAX_DEPTH + 1)}`, "unreadable-expression"],
  [`1${" + 1".repeat(MAX_TOKENS)}`, "unreadable-expression"],
  [`sum(${"1,".repeat(100_000)}1)`, "unreadable-expression"],
  ["x".repeat(100_000), "unknown-name"],
  [`"${"a".repeat(100_000)}" + 1`, "wrong-dimension"],
  [`1 ${"mm.".repeat(50_000)}mm`, "unknown-unit"],
  [`${"((".repeat(20)}1`, "unreadable-expression"],
  [")))1(((", "unreadable-expression"],
  ["(1", "unreadable-expression"],
  ["1)", "unreadable-expression"],
  ["abs(1", "unreadable-expression"],
  ["abs 1)", "unreadable-expression"],
  // Names that every object has.
  ["constructor", "unknown-name"],
  ["toString", "unknown-name"],
  ["hasOwnProperty", "unknown-name"],
  ["valueOf + 1", "unknown-name"],
  ["a.constructor.constructor", "unknown-name"],
  ["__proto__", "unreadable-expression"],
  ["constructor()", "unknown-function"],
  ["toString(1)", "unknown-function"],
  ["valueOf()", "unknown-function"],
  ["hasOwnProperty(1)", "unknown-function"],
  ['constructor.constructor("return process")()', "unreadable-expression"],
  ["thermal_growth(300 mm, constructor, 60 K)", "unknown-name"],
  ["thermal_growth(300 mm, toString, 60 K)", "unknown-name"],
  ["preload(54 N.m, M10, constructor)", "unknown-name"],
  ['freeze_point(50 %, "constructor")', "out-of-range-argument"],
  ['freeze_point(50 %, "__proto__")', "out-of-range-argument"],
  ['wire_area("AWG constructor")', "out-of-range-argument"],
  ["1 constructor", "unknown-unit"],
  ["1 toString", "unknown-unit"],
  ["3 in in constructor", "unknown-unit"],
  ["62 GBP in constructor", "unknown-unit"],
  // What calculators and evaluators of a wider language would carry out.
  ['import("fs")', "unknown-function"],
  ['require("child_process")', "unknown-function"],
  ['eval("1+1")', "unknown-function"],
  ['evaluate("1+1")', "unknown-function"],
  ['parse("1+1")', "unknown-function"],
  ['compile("1+1")', "unknown-function"],
  ['simplify("x+x")', "unknown-function"],
  ['derivative("x^2", "x")', "unknown-function"],
  ['createUnit("foo")', "unknown-function"],
  ["typed(1)", "unknown-function"],
  ["factorial(170)", "unknown-function"],
  ["gamma(1e99)", "unknown-function"],
  ["zeros(1e9, 1e9)", "unknown-function"],
  ["range(0, 1e9)", "unknown-function"],
  ["random()", "unknown-function"],
  ["process.exit()", "unknown-function"],
  ["process", "unknown-name"],
  ["globalThis", "unknown-name"],
  ["this", "unknown-name"],
  ["pi", "unknown-name"],
  ["Infinity", "unknown-name"],
  ["NaN", "unknown-name"],
  ["config({})", "unreadable-expression"],
  ["f(x) = x", "unreadable-expression"],
  ["x = 3", "unreadable-expression"],
  ["1; 2", "unreadable-expression"],
  ["1:1e5", "unreadable-expression"],
  ["[1, 2; 3, 4]", "unreadable-expression"],
  ["{a: 1}", "unreadable-expression"],
  ["a[1]", "unreadable-expression"],
  ["5!", "unreadable-expression"],
  ["1 > 2", "unreadable-expression"],
  ["1 == 1", "unreadable-expression"],
  ["1 ? 2 : 3", "unreadable-expression"],
  ["1 & 2", "unreadable-expression"],
  ["x => x", "unreadable-expression"],
  // biome-ignore lint/suspicious/noTemplateCurlyInString: the attack is this very text.
  ["${1+1}", "unreadable-expression"],
  ["`id`", "unreadable-expression"],
  ["$(id)", "unreadable-expression"],
  ["0x10", "unreadable-expression"],
  ["3i", "unknown-unit"],
  // Strings and their escapes.
  ['"open', "unreadable-expression"],
  ['"ends with \\', "unreadable-expression"],
  ["'single'", "unreadable-expression"],
  ['limits_of("52 H7\\u0000")', "out-of-range-argument"],
  ['limits_of("52 H7\\" + 1")', "out-of-range-argument"],
  ['limits_of("")', "out-of-range-argument"],
  [`limits_of("${"9".repeat(50_000)} H7")`, "out-of-range-argument"],
  ['tyre_diameter("999/99R99.9999")', "out-of-range-argument"],
  ['"a" + "b"', "wrong-dimension"],
  ['"a" * 3', "wrong-dimension"],
  // Look-alikes and control characters.
  ["５ mm", "unreadable-expression"],
  ["1 ｍｍ", "unreadable-expression"],
  ["аbs(1)", "unreadable-expression"],
  ["1\u200b+ 1", "unreadable-expression"],
  ["1 \u202e+ 1", "unreadable-expression"],
  ["1\u0000", "unreadable-expression"],
  ["√4", "unreadable-expression"],
  ["1 ➕ 1", "unreadable-expression"],
  ["𝟏 mm", "unreadable-expression"],
  ["\ud800", "unreadable-expression"],
  // Nothing.
  ["", "unreadable-expression"],
  ["   ", "unreadable-expression"],
  ["()", "unreadable-expression"],
  ["+", "unreadable-expression"],
  ["in mm", "unreadable-expression"],
  [",", "unreadable-expression"],
  ["abs(,)", "unreadable-expression"],
];

describe("a hostile expression is a plain complaint", () => {
  test.each(attacks.map(([text, code]) => [abridged(text), code, text] as const))(
    "%s: %s",
    (_, code, text) => {
      const calculation = calculate(text);
      expect("fault" in calculation ? calculation.fault.code : "a result").toBe(code);
    },
  );

  test("that stands somewhere in the text", () => {
    for (const [text] of attacks) {
      const { message, start, end } = fault(text);
      expect(message.length).toBeGreaterThan(10);
      expect(start).toBeGreaterThanOrEqual(0);
      expect(end).toBeGreaterThanOrEqual(start);
      expect(end).toBeLessThanOrEqual(text.length);
    }
  });

  test("that is long is told in few words", () => {
    for (const [text] of attacks) {
      const calculation = calculate(text);
      const lines = calculationLines(text, calculation);
      expect(Math.max(...lines.map((line) => line.length))).toBeLessThan(700);
      expect(JSON.stringify(calculationObject(calculation)).length).toBeLessThan(1000);
    }
  });

  test("a tree deeper than any that is read is refused, not followed", () => {
    let tree: Expression = { is: "quantity", value: one, start: 0, end: 1 };
    for (let depth = 0; depth < 100_000; depth++) tree = { is: "negative", of: tree, start: 0, end: 1 };
    expect(evaluate(tree)).toMatchObject({ fault: { code: "unreadable-expression" } });
  });

  test("the longest and the deepest that are read have a result", () => {
    const terms = Math.floor(MAX_TOKENS / 2);
    expect(calculate(`1${" + 1".repeat(terms - 1)}`)).toMatchObject({ value: { kind: "quantity" } });
    expect(calculate(`${"(".repeat(MAX_DEPTH)}1${")".repeat(MAX_DEPTH)}`)).toMatchObject({
      value: { kind: "quantity" },
    });
    expect(calculate(`${"abs(".repeat(MAX_DEPTH)}1${")".repeat(MAX_DEPTH)}`)).toMatchObject({
      value: { kind: "quantity" },
    });
  });
});

const one = {
  kind: "quantity",
  parts: [{ number: { kind: "number", text: "1", start: 0, end: 1 }, unit: undefined }],
  each: false,
  start: 0,
  end: 1,
} as const;

function abridged(text: string): string {
  const visible = JSON.stringify(text).slice(1, -1);
  return visible.length <= 60 ? visible : `${visible.slice(0, 50)}… (${text.length} characters)`;
}
