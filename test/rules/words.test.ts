/** Values in the words of a message. */
import { describe, expect, it } from "vitest";
import {
  list,
  say,
  sayIn,
  sayNumber,
  sayPercent,
  sayReadings,
  sayShare,
  sayUncertainty,
} from "../../server/rules/words.ts";
import { q } from "../quantities/written.ts";

describe("in the words of a message", () => {
  it("a quantity is as it was written, or in the unit of another where that can be", () => {
    expect(say(q("9.10 mm"))).toBe("9.10 mm");
    expect(sayIn(q("1 in"), q("5 mm"))).toBe("25.4 mm");
    expect(sayIn(q("1 in"), q("5 kg"))).toBe("1 in");
  });

  it.each([
    [[], undefined, ""],
    [["a"], undefined, "a"],
    [["a", "b"], undefined, "a and b"],
    [["a", "b", "c"], "or", "a, b or c"],
  ])("%j with %s is listed as %j", (items, joiner, words) => {
    expect(list(items, joiner)).toBe(words);
  });

  it("several readings are told with how far apart they are, one is not", () => {
    expect(sayReadings({ readings: 2, spread: q("0.02 mm") })).toBe(
      " (the worst of 2 readings, 0.02 mm apart)",
    );
    expect(sayReadings({ readings: 1, spread: q("0.02 mm") })).toBe("");
    expect(sayReadings({ readings: 3, spread: undefined })).toBe("");
  });

  it("an uncertainty is told where it is known", () => {
    expect(sayUncertainty({ uncertainty: q("0.05 mm") })).toBe(" ± 0.05 mm");
    expect(sayUncertainty({ uncertainty: undefined })).toBe("");
  });

  it.each([
    [0.045, "4.5 %"],
    [0.0456, "4.6 %"],
    [0.0999, "10 %"],
    [0.1, "10 %"],
    [0.154, "15 %"],
    [0, "0 %"],
  ])("a share of %s is %s", (share, words) => {
    expect(sayShare(share)).toBe(words);
  });

  it("computed numbers have two decimals at most, computed percentages none", () => {
    expect([1.8, 2, 1.666, 1.004].map(sayNumber)).toEqual(["1.8", "2", "1.67", "1"]);
    expect([103.5, 99.4].map(sayPercent)).toEqual(["104 %", "99 %"]);
  });
});

it.each([
  [0.199, 0.2, "19.9 %"],
  [0.19996, 0.2, "19.996 %"],
  [0.2, 0.2, "20 %"],
  [0.3, 0.1, "30 %"],
  [0.1001, 0.1, "10.01 %"],
  [0.19, 0.2, "19 %"],
])("a share of %s beside one of %s has the figures that tell them apart", (share, bound, words) => {
  expect(sayShare(share, bound)).toBe(words);
});
