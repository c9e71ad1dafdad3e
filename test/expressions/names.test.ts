import { describe, expect, test } from "vitest";
import { readExpression } from "../../grammar/expression-parser.ts";
import { namesIn } from "../../server/expressions/names.ts";

function namesOf(text: string): readonly string[] {
  const { tree } = readExpression(text, 0);
  if (tree === undefined) throw new Error(`${text} does not read`);
  return namesIn(tree).map(({ start, end }) => text.slice(start, end));
}

describe("the names in an expression", () => {
  test.each([
    ["front.left.disc.thickness - 8.4 mm", ["front.left.disc.thickness"]],
    ["(a + -b) * max(c, 2) ^ a in mm", ["a", "b", "c", "a"]],
    ["preload(torque, M10, k)", ["torque", "k"]],
    ["thermal_growth(length, steel, rise)", ["length", "rise"]],
    ["preload(54 N.m, M10, oiled)", []],
    ["proof_load(3/8 BSF, T)", []],
    ["nothing_known(steel)", ["steel"]],
    ["1 + 2", []],
  ])("%s: %s", (text, expected) => {
    expect(namesOf(text)).toEqual(expected);
  });
});
