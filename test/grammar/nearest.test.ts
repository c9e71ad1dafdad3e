import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearest } from "../../grammar/nearest.ts";

describe("the nearest words", () => {
  it.each([
    ["remvoed", "removed", "two letters swapped"],
    ["remooved", "removed", "a letter too many"],
    ["remved", "removed", "a letter too few"],
    ["renoved", "removed", "a letter replaced"],
    ["Removed", "removed", "another case"],
  ])("%s is %s: %s", (word, expected) => {
    expect(nearest(word, ["fitted", "removed", "rejected"])).toEqual([expected]);
  });

  it("are none for a word of two letters, one change away for three to five, two for six to eight", () => {
    expect(nearest("by", ["my"])).toEqual([]);
    expect(nearest("bak", ["back"])).toEqual(["back"]);
    expect(nearest("bk", ["back"])).toEqual([]);
    expect(nearest("brded", ["bled"])).toEqual([]);
    expect(nearest("mesurd", ["measured"])).toEqual(["measured"]);
    expect(nearest("mesrd", ["measured"])).toEqual([]);
  });

  it("come nearest first, ties in the order given, three at most", () => {
    expect(nearest("locked", ["rocked", "licked", "locked_", "lacked", "mocked"])).toEqual([
      "rocked",
      "licked",
      "locked_",
    ]);
    expect(nearest("found", ["fund", "bound", "Found"], 2)).toEqual(["Found", "fund"]);
    expect(nearest("found", ["found"])).toEqual([]);
  });

  it("are those that so many changes lead to, however one counts them", () => {
    const word = fc.string({ unit: fc.constantFrom("a", "b", "c"), maxLength: 12 });
    fc.assert(
      fc.property(word, word, (from, to) => {
        const reach = Math.max(0, Math.ceil((from.length - 2) / 3));
        const isNear = from !== to && changes(from, to, new Map()) <= reach;
        expect(nearest(from, [to])).toEqual(isNear ? [to] : []);
      }),
      { numRuns: 2000 },
    );
  });
});

/** The least number of changes from one word to another, counted from their ends. */
function changes(from: string, to: string, known: Map<string, number>): number {
  if (from === "" || to === "") return from.length + to.length;
  const key = `${from} ${to}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const [less, lessTo] = [from.slice(0, -1), to.slice(0, -1)];
  const counts = [
    changes(less, to, known) + 1,
    changes(from, lessTo, known) + 1,
    changes(less, lessTo, known) + (from.at(-1) === to.at(-1) ? 0 : 1),
  ];
  const isSwapped = from.length > 1 && from.at(-1) === to.at(-2) && from.at(-2) === to.at(-1);
  if (isSwapped && to.length > 1) counts.push(changes(from.slice(0, -2), to.slice(0, -2), known) + 1);
  const least = Math.min(...counts);
  known.set(key, least);
  return least;
}
