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
});
