import { describe, expect, test } from "vitest";
import { calculate, calculationLines, calculationObject } from "../../server/expressions/calculation.ts";
import { names } from "./calculated.ts";

function printed(text: string): string {
  return calculationLines(text, calculate(text)).join("\n");
}

describe("a calculation as typed", () => {
  test("the preload of a torque, with the figures it rests on", () => {
    // By hand: 54 N.m / (0.2 * 10 mm) = 27 kN; 65 % and 135 % of it are the ends of the scatter.
    expect(printed("preload(54 N.m, M10x1.25, 0.2) in kN").split("\n")).toEqual([
      "27 kN",
      "  nut factor 0.20",
      "  tightening by torque scatters by ± 25 to 35 %: 17.6 kN to 36.5 kN",
      "  an estimate: the maker's figure comes first",
      "  preload: short form T = K F d; nut factors after Shigley, Mechanical Engineering Design",
    ]);
  });

  test("the limits of a tolerance class", () => {
    // ISO 286-2: 52 H7 is +0.030 / 0.
    expect(printed('limits_of("52 H7")').split("\n")[0]).toBe("52.000 .. 52.030 mm");
  });

  test("a torque in other units", () => {
    // NIST SP 811: 1 lbf.ft = 1.355818 N.m.
    expect(printed("40 lbf.ft in N.m")).toBe("54.2 N.m");
  });

  test("a difference of two temperatures", () => {
    expect(printed("78 degC - 20 degC")).toBe("58 K");
  });

  test("what cannot be added is shown below the operand, and why", () => {
    expect(printed("1 N.m + 1 mm").split("\n")).toEqual([
      "1 N.m + 1 mm",
      "        ^^^^",
      "cannot add a torque (1 N.m) and a length (1 mm)",
    ]);
  });

  test("what cannot be read is shown at its place", () => {
    expect(printed("(3 mm + ").split("\n").slice(0, 2)).toEqual(["(3 mm + ", "      ^"]);
    expect(printed("9,12 mm + 1 mm").split("\n")).toEqual([
      "9,12 mm + 1 mm",
      "^^^^",
      'expected 9.12 at "9,12"',
    ]);
    expect(printed("")).toBe("expected an expression, such as 54 mm - 53.9 mm");
  });

  test("of a long expression the part around the fault is shown", () => {
    const text = `${"1 + ".repeat(100)}oops${" + 1".repeat(100)}`;
    const [shown = "", carets = ""] = printed(text).split("\n");
    expect(shown.length).toBeLessThanOrEqual(100);
    expect(shown.slice(carets.indexOf("^"), carets.lastIndexOf("^") + 1)).toBe("oops");
  });

  test("control characters of the terminal are not printed back in the line", () => {
    expect(printed("1\t+\t1 mm").split("\n")[0]).toBe("1 + 1 mm");
  });
});

describe("the machine form", () => {
  const object = (text: string) => calculationObject(calculate(text));
  const keys = ["kind", "lower", "notes", "schema", "text", "unit", "upper", "value"];

  test("has all its keys for every kind of result", () => {
    for (const text of ["1 mm", "62 GBP", "40 GBP/h", 'limits_of("52 H7")', "M10", '"a"', "class 8.8"]) {
      expect(Object.keys(object(text)).sort()).toEqual(keys);
    }
  });

  test("of a quantity", () => {
    expect(object("40 lbf.ft in N.m")).toMatchObject({
      schema: "cotter/calc/1",
      kind: "quantity",
      value: expect.closeTo(54.232717932, 8),
      unit: "N.m",
      text: "54.2 N.m",
      lower: null,
      upper: null,
      notes: [],
    });
  });

  test("of a bare number, which has no unit", () => {
    expect(object("6 / 4")).toMatchObject({ kind: "quantity", value: 1.5, unit: null, text: "1.5" });
  });

  test("nought has no sign", () => {
    expect(Object.is((object("0 * -3") as { value: number }).value, 0)).toBe(true);
  });

  test("of limits", () => {
    expect(object('limits_of("52 H7")')).toMatchObject({
      kind: "limits",
      value: null,
      unit: "mm",
      text: "52.000 .. 52.030 mm",
      lower: { value: 52, unit: "mm", text: "52.000 mm" },
      upper: { value: 52.03, unit: "mm", text: "52.030 mm" },
    });
  });

  test("of money and of a price, as decimal texts", () => {
    expect(object("62 GBP * 1.2")).toMatchObject({
      kind: "money",
      value: "74.40",
      unit: "GBP",
      text: "74.40 GBP",
    });
    expect(object("100 GBP / 4 h")).toMatchObject({ kind: "money", value: "25.00", unit: "GBP/h" });
  });

  test("of a thread, a class and a text", () => {
    expect(object("M10x1.25")).toMatchObject({ kind: "text", value: null, unit: null, text: "M10x1.25" });
    expect(object("grade 5")).toMatchObject({ kind: "text", text: "grade 5" });
    expect(object('"as found"')).toMatchObject({ kind: "text", text: "as found" });
  });

  test("of a failure", () => {
    expect(object("1 N.m + 1 mm")).toEqual({
      schema: "cotter/failure/1",
      code: "wrong-dimension",
      message: "cannot add a torque (1 N.m) and a length (1 mm)",
      from: { column: 9 },
      to: { column: 13 },
    });
  });

  test("with the names of a build", () => {
    const lookup = names({ "front.left.disc.thickness": "9.12 mm" });
    const calculation = calculate("front.left.disc.thickness - 8.4 mm", lookup);
    expect(calculationObject(calculation)).toMatchObject({ value: 0.72, unit: "mm", text: "0.72 mm" });
  });

  test("survives being written as JSON", () => {
    const written = JSON.stringify(object("preload(54 N.m, M10, oiled)"));
    expect(JSON.parse(written)).toEqual(object("preload(54 N.m, M10, oiled)"));
  });
});
