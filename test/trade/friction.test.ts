/** Friction by its words: which have a figure, and how it is printed. */
import { expect, test } from "vitest";
import { describeFriction, nominalNutFactor, readFriction } from "../../server/trade/friction.ts";

test("a word stands for its figures, with their source", () => {
  const dry = readFriction("dry");
  expect(dry).toEqual({
    kind: "friction",
    low: 0.2,
    high: 0.25,
    word: "dry",
    source: "after Shigley and Machinery's Handbook",
  });
  expect(readFriction("buttered")).toBeUndefined();
});

test("a word may be one without a figure of its own", () => {
  expect(readFriction("threadlocker")).toEqual({
    kind: "no figure",
    word: "threadlocker",
    source: "wet threadlocker: the figure its maker gives",
  });
});

test("the figure to compute with is the middle of what is published", () => {
  expect(nominalNutFactor({ kind: "friction", low: 0.2, high: 0.25 })).toBeCloseTo(0.225, 12);
});

test("it is printed as one figure or two, with its word and its source where there are any", () => {
  expect(describeFriction({ kind: "friction", low: 0.2, high: 0.2 })).toBe("nut factor 0.20");
  expect(describeFriction({ kind: "friction", low: 0.2, high: 0.25, word: "dry" })).toBe(
    "dry: nut factor 0.20 to 0.25",
  );
  expect(
    describeFriction({ kind: "friction", low: 0.18, high: 0.18, word: "oiled", source: "a table" }),
  ).toBe("oiled: nut factor 0.18 (a table)");
});
