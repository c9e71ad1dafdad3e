import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { MAX_DEPTH, MAX_LENGTH, MAX_TOKENS, readExpression } from "../../grammar/expression-parser.ts";
import type { Expression, SyntaxFault } from "../../grammar/syntax.ts";
import { plain, readRecord, recordIn, said } from "./marked-log.ts";

/** An expression with every operation in parentheses. */
function shown(expression: Expression): string {
  switch (expression.is) {
    case "binary":
      return `(${shown(expression.left)} ${expression.operator} ${shown(expression.right)})`;
    case "negative":
      return `-${shown(expression.of)}`;
    case "conversion":
      return `[${shown(expression.of)} -> ${expression.unit.text}]`;
    case "call":
      return `${expression.name.text}(${expression.arguments.map(shown).join("; ")})`;
    case "name":
      return expression.text;
    case "wireGauge":
      return `AWG ${expression.value.number.text}`;
    case "thread":
      return `<${expression.value.text}>`;
    default:
      return String(plain(expression.value));
  }
}

function read(text: string): string {
  const { tree, fault } = readExpression(text, 0);
  return tree === undefined ? fault.code : shown(tree);
}

function refused(text: string): SyntaxFault | undefined {
  return readExpression(text, 0).fault;
}

describe("expressions", () => {
  it.each([
    ["1 + 2 * 3", "(1 + (2 * 3))"],
    ["(1 + 2) * 3", "((1 + 2) * 3)"],
    ["1 - 2 - 3", "((1 - 2) - 3)"],
    ["12 / 3 / 2", "((12 / 3) / 2)"],
    ["2 ^ 3 ^ 2", "(2 ^ (3 ^ 2))"],
    ["-2 ^ 2", "-(2 ^ 2)"],
    ["2 ^ -1", "(2 ^ -1)"],
    ["--1", "--1"],
    ["+1", "1"],
    ["2 × 3 · 4", "((2 * 3) * 4)"],
    ["5 \u2212 3", "(5 - 3)"],
    ["9.5 mm - front.left.disc.thickness", "(9.5 mm - front.left.disc.thickness)"],
    ["max(9,12)", "max(9; 12)"],
    ["max(9.1, 9.2, 9.3)", "max(9.1; 9.2; 9.3)"],
    ["f()", "f()"],
    ["sqrt(a ^ 2 + b ^ 2)", "sqrt(((a ^ 2) + (b ^ 2)))"],
    ['limits_of("52 H7")', 'limits_of("52 H7")'],
    ["1 deg 30 arcmin + 15 arcmin", "(1 deg 30 arcmin + 15 arcmin)"],
    ["1e-3 m", "1e-3 m"],
  ])("%s", (text, expected) => expect(read(text)).toBe(expected));

  it.each([
    ["a-b", "(a - b)"],
    ["9.5 mm-a", "(9.5 mm - a)"],
    ["9.5 mm-3 mm", "(9.5 mm - 3 mm)"],
    ["9.5mm-3mm", "(9.5 mm - 3 mm)"],
    ["5-3", "(5 - 3)"],
    ["a-3/8", "(a - (3 / 8))"],
  ])("names hold no hyphens, so a minus needs no spaces: %s", (text, expected) => {
    expect(read(text)).toBe(expected);
  });

  it.each([
    ["3/8 in", "3/8 in"],
    ["a + 3/8 in", "(a + 3/8 in)"],
    ["a + 1-3/8 in", "(a + 1-3/8 in)"],
    ["1 3/8 in", "1 3/8 in"],
    ["(3/8 in)", "3/8 in"],
    ["max(3/8 in,7/16 in)", "max(3/8 in; 7/16 in)"],
    ["3/8", "(3 / 8)"],
    ["3/8 mm", "(3 / 8 mm)"],
    ["a-3/8 in", "(a - (3 / 8 in))"],
    ["a*3/8 in", "((a * 3) / 8 in)"],
    ["10/3/8 in", "((10 / 3) / 8 in)"],
    ["pitch(3/8-24 UNF)", "pitch(<3/8-24 UNF>)"],
    ["pitch(1/4 BSW)", "pitch(<1/4 BSW>)"],
    ["pitch( 2 BA )", "pitch(<2 BA>)"],
    ["pitch(M10x1.25)", "pitch(<M10x1.25>)"],
    ["stress_area(M8)", "stress_area(<M8>)"],
    ["proof_load(M8, class 8.8)", "proof_load(<M8>; class 8.8)"],
    ["proof_load(M8, class A2-70)", "proof_load(<M8>; class A2-70)"],
    ["proof_load(3/8-24 UNF, grade 5) in N", "[proof_load(<3/8-24 UNF>; grade 5) -> N]"],
    ["proof_load(M8, class unknown)", "proof_load(<M8>; class unknown)"],
    ["wire_area(AWG 14) in mm2", "[wire_area(AWG 14) -> mm2]"],
    ["AWG 14 in mm2", "[AWG 14 -> mm2]"],
    ["class - 3", "(class - 3)"],
  ])("fractions, threads and classes are single values: %s", (text, expected) =>
    expect(read(text)).toBe(expected),
  );

  it.each([
    ["3 in in mm", "[3 in -> mm]"],
    ["a in in", "[a -> in]"],
    ["a + b in mm", "[(a + b) -> mm]"],
    ["(a in mm) + b", "([a -> mm] + b)"],
    ["f(a in mm, b)", "f([a -> mm]; b)"],
    ["a in N.m", "[a -> N.m]"],
    ["a in lbf·ft", "[a -> lbf·ft]"],
    ["a in N/mm2", "[a -> N/mm2]"],
    ["a in °C", "[a -> °C]"],
    ["a in %", "[a -> %]"],
  ])("`in` converts, and binds loosest: %s", (text, expected) => expect(read(text)).toBe(expected));

  it.each([
    ["9.5 mm/pitch", "(9.5 mm / pitch)"],
    ["9.5 mm/2", "(9.5 mm / 2)"],
    ["54 N.m/radius", "(54 N.m / radius)"],
    ["30 N/mm", "30 N/mm"],
    ["30 N/mm2", "30 N/mm2"],
    ["40 lbf.ft", "40 lbf.ft"],
    ["5 N·m", "5 N·m"],
    ["5 mm·width", "(5 mm * width)"],
    ["5 mm^2", "5 mm^2"],
    ["5 mm2 * 3", "(5 mm2 * 3)"],
    ["(5 mm)^2", "(5 mm ^ 2)"],
    ["20 °C-15 °C", "(20 °C - 15 °C)"],
    // A power that no unit takes stays with the unit, whose reader refuses it.
    ["5 mm^-2", "5 mm^-2"],
    ["5 mm^7", "5 mm^7"],
  ])("what is joined to a unit belongs to it if it is a unit: %s", (text, expected) => {
    expect(read(text)).toBe(expected);
  });

  it("lie where they were written, parentheses included", () => {
    const { tree } = readExpression(" (a + b) * c", 100);
    expect(tree).toMatchObject({
      start: 101,
      end: 112,
      left: { start: 101, end: 108 },
      right: { start: 111, end: 112 },
    });
  });

  it("keep escapes of strings resolved", () => {
    expect(readExpression('f("a\\"b")', 0).tree).toMatchObject({ arguments: [{ value: { text: 'a"b' } }] });
  });
});

describe("an expression that cannot be read", () => {
  it.each([
    ["", "missing-value", "", "an expression, such as 54 mm - 53.9 mm"],
    ["9,12 mm", "decimal-comma", "9,12", "9.12"],
    ["9.1,2 mm", "unreadable-expression", ",2 mm", "an operator, or the end of the expression"],
    ["9, 12 mm", "unreadable-expression", ", 12 mm", "an operator, or the end of the expression"],
    ["max(9.1; 9.2)", "unreadable-expression", "; 9.2)", "an operator, or the end of the expression"],
    ["1 +", "unreadable-expression", "+", "a value behind this"],
    ["(1 + 2", "unreadable-expression", "2", "a closing parenthesis"],
    ["(1 +", "unreadable-expression", "+", "a value behind this"],
    ["1 + 2)", "unreadable-expression", ")", "an operator, or the end of the expression"],
    ["a b", "unreadable-expression", "b", "an operator, or the end of the expression"],
    ["a in", "unreadable-expression", "in", "a unit behind in"],
    ["a in mm + 3", "unreadable-expression", "+ 3", "an operator, or the end of the expression"],
    ["= 3", "unreadable-expression", "= 3", "an operator, or the end of the expression"],
    ["a = 3", "unreadable-expression", "= 3", "an operator, or the end of the expression"],
    ["$a", "unreadable-expression", "$a", "an operator, or the end of the expression"],
    ['3/8"', "unknown-unit", '"', "a unit by its name, such as in"],
    ['f("a', "unclosed-string", '"a', 'a closing "'],
  ])("%s", (text, code, found, expected) => {
    expect(refused(text)).toMatchObject({ code, found, expected });
  });

  it("offers the point for the comma", () => {
    expect(refused("2 * 9,12 mm")?.fixes).toEqual([
      { start: 4, end: 8, text: "9.12", title: "Write 9.12", sure: true },
    ]);
    expect(refused("9,125 mm")?.fixes[0]?.sure).toBe(false);
  });

  it("is one longer or deeper than any honest calculation", () => {
    const sum = (terms: number) => Array.from({ length: terms }, () => "1").join("+");
    expect(refused(sum(MAX_TOKENS / 2))).toBeUndefined();
    expect(refused(sum(MAX_TOKENS / 2 + 1))?.code).toBe("unreadable-expression");
    const nested = (depth: number) => `${"(".repeat(depth)}1${")".repeat(depth)}`;
    expect(refused(nested(MAX_DEPTH))).toBeUndefined();
    expect(refused(nested(MAX_DEPTH + 1))?.code).toBe("unreadable-expression");
    expect(refused(`${"-".repeat(MAX_DEPTH)}1`)).toBeUndefined();
    expect(refused(`${"-".repeat(100_000)}1`)?.code).toBe("unreadable-expression");
    expect(refused(Array.from({ length: 60 }, () => "2").join("^"))?.code).toBe("unreadable-expression");
    expect(refused(Array.from({ length: 60 }, () => "f(2").join("^"))?.code).toBe("unreadable-expression");
  });

  it("is one with more characters than are read, whatever they are; the rest of the log is read", () => {
    expect(refused(`1${" ".repeat(MAX_LENGTH - 1)}`)).toBeUndefined();
    expect(refused(` ${"1".repeat(MAX_LENGTH)} `)).toMatchObject({
      code: "unreadable-expression",
      start: 1,
      end: 1 + MAX_LENGTH,
      expected: "an expression of at most 200000 characters",
    });
    const digits = "1".repeat(1_000_000);
    const { blocks } = Document.read(`day 2026-05-02\n  calc: gap = ${digits}\n  removed: hub\n`);
    const [calc, removed] = (blocks[0]?.items ?? []).filter((item) => item.kind === "record");
    expect(calc?.faults).toMatchObject([
      { code: "unreadable-value", start: 23, expected: "a line of at most 200000 characters" },
    ]);
    expect(removed).toMatchObject({ faults: [], broken: false });
  });
});

describe("calc", () => {
  it("takes all behind its = in a definition", () => {
    expect(said(readRecord("part", "calc: wear = 9.5 mm - 9.1 mm in thou"))).toMatchObject({ name: "wear" });
    expect(recordIn("part", 'calc: wear = 9.5 mm "inner"').faults[0]).toMatchObject({
      code: "unreadable-expression",
    });
  });

  it("of a day may say by whom, and end in a note", () => {
    const record = readRecord("day", 'calc: wear = max(f("a by b"), (9.5 mm)) by "JR" "inner edge"');
    expect(said(record)).toMatchObject({ name: "wear", by: '"JR"', note: '"inner edge"' });
    const expression = record.values.get("expression");
    expect(expression?.kind === "expression" && shown(expression.tree)).toBe('max(f("a by b"); 9.5 mm)');
  });

  it("says what is missing", () => {
    expect(recordIn("day", "calc: wear 9.5 mm").faults[0]).toMatchObject({
      code: "unreadable-value",
      expected: "= and an expression",
    });
    expect(recordIn("day", "calc: wear").faults[0]).toMatchObject({ code: "missing-value" });
    expect(recordIn("day", "calc: wear =").faults[0]).toMatchObject({
      code: "missing-value",
      start: recordIn("day", "calc: wear =").contentEnd,
    });
    expect(recordIn("day", "calc: a.b = 3").faults[0]).toMatchObject({
      code: "unreadable-value",
      found: "a.b",
    });
  });
});
