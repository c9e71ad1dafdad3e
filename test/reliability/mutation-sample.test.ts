/** What a draw of changes says about all of them: that each has the same chance, and how sure the share is. */
import { expect, test } from "vitest";
import { isDrawn, nameOf } from "./drawn-mutants.mjs";
import { wilson } from "./mutation-sample.mjs";

/** Changes as they lie in a program: many in one file, close to each other, of few kinds. */
const CHANGES = Array.from({ length: 40_000 }, (_, index) => ({
  fileName: `server/trade/file${index % 20}.ts`,
  location: {
    start: { line: Math.floor(index / 40), column: 4 },
    end: { line: Math.floor(index / 40), column: 5 + (index % 3) },
  },
  mutatorName: ["EqualityOperator", "StringLiteral"][index % 2] ?? "",
  replacement: `text${index % 40}`,
}));

const drawn = (seed: number, from: number, to: number) =>
  CHANGES.filter((change) => isDrawn({ seed, from, to }, change));

test("about as many are drawn as the share says, from each file and of each kind", () => {
  const some = drawn(1, 0, 0.1);
  // Five standard deviations either way.
  expect(Math.abs(some.length - 4000)).toBeLessThan(300);
  for (let file = 0; file < 20; file++) {
    const own = some.filter(({ fileName }) => fileName === `server/trade/file${file}.ts`);
    expect(Math.abs(own.length - 200)).toBeLessThan(68);
  }
  const texts = some.filter(({ mutatorName }) => mutatorName === "StringLiteral");
  expect(Math.abs(texts.length - some.length / 2)).toBeLessThan(160);
});

test("the same seed draws the same, stretches share none and are together the whole; another seed draws others", () => {
  expect(drawn(1, 0, 0.1)).toEqual(drawn(1, 0, 0.1));
  const parts = [drawn(1, 0, 0.1), drawn(1, 0.1, 0.35), drawn(1, 0.35, 1)];
  expect(new Set(parts.flat()).size).toBe(CHANGES.length);
  expect(parts.flat()).toHaveLength(CHANGES.length);
  const first = new Set(drawn(1, 0, 0.1));
  const again = drawn(2, 0, 0.1).filter((change) => first.has(change));
  expect(Math.abs(again.length - 400)).toBeLessThan(100);
});

test("where changes are named it is these alone, of those of the draw", () => {
  const [first, second, third] = drawn(1, 0, 0.1);
  if (first === undefined || second === undefined || third === undefined) throw new Error("none was drawn");
  const other = CHANGES.find((change) => !isDrawn({ seed: 1, from: 0, to: 0.1 }, change));
  const named = [first, third, ...(other === undefined ? [] : [other])].map(nameOf);
  const again = CHANGES.filter((change) => isDrawn({ seed: 1, from: 0, to: 0.1, named }, change));
  expect(again).toEqual([first, third]);
  // Two changes of one place differ by what they put there.
  expect(nameOf({ ...first, replacement: "other" })).not.toBe(nameOf(first));
});

// Newcombe, Two-sided confidence intervals for the single proportion, Statistics in Medicine 17 (1998), table I, method 3.
test.each([
  [81, 263, 0.2553, 0.3662],
  [15, 148, 0.0624, 0.1605],
  [0, 20, 0, 0.1611],
  [1, 29, 0.0061, 0.1718],
])("%d of %d: the true share lies between %d and %d, 95 of 100 times", (killed, all, lower, upper) => {
  expect(wilson(killed, all).map((bound) => Number(bound.toFixed(4)))).toEqual([lower, upper]);
});
