import { describe, expect, test } from "vitest";
import { leastOf, mostOf } from "../../server/trade/identification/candidate.ts";
import { dimensionOfFamily, families } from "../../server/trade/identification/family.ts";
import { standardCandidates } from "../../server/trade/identification/standard-candidates.ts";
import { externalLimits, internalLimits } from "../../server/trade/identification/thread-limits.ts";
import { madeWithin, wornAllowances } from "../../server/trade/tables/identification-figures.ts";
import type { Thread } from "../../server/trade/thread.ts";
import { readThread } from "../../server/trade/thread.ts";
import { externalThreadLimits } from "../../server/trade/thread-tolerances.ts";

const INCH = 0.0254;

function thread(name: string): Thread {
  const read = readThread(name);
  if ("fault" in read) throw new Error(`no thread: ${name}`);
  return read;
}

describe("limits of size of new threads", () => {
  // ISO 965-1 tolerances are rounded to preferred numbers, 6 % apart: the formulas meet them within half of that.
  test.each(["M4", "M5", "M6", "M8", "M8x1", "M10", "M10x1.25", "M12", "M12x1.5", "M16", "M20", "M24"])(
    "%s agrees with the tables of ISO 965-1, class 6g",
    (name) => {
      const table = externalThreadLimits(thread(name));
      const { major, effective } = externalLimits(thread(name));
      expect(Math.abs(major.lower - (table?.majorDiameter.lower ?? 0))).toBeLessThan(12e-6);
      expect(Math.abs(effective.lower - (table?.pitchDiameter.lower ?? 0))).toBeLessThan(9e-6);
      expect(major.upper).toBeGreaterThan(table?.majorDiameter.upper ?? 0);
    },
  );

  // Least major diameter and least pitch diameter of class 2A, in: unified thread tables of eFunda; the last one the worked
  // example of Machinery's Handbook, 31st edition.
  test.each([
    ["#1-64 UNC", 0.0686, 0.0603],
    ["#1-72 UNF", 0.0689, 0.0615],
    ["#2-56 UNC", 0.0813, 0.0717],
    ["15/16-20 UNEF", 0.928, 0.8991],
    ["1/2-28 UNEF", 0.4924, 0.472],
  ])("%s agrees with class 2A: the crests to half a thou, the flanks to a thou", (name, major, effective) => {
    const limits = externalLimits(thread(name));
    expect(Math.abs(limits.major.lower / INCH - major)).toBeLessThan(0.0005);
    expect(Math.abs(limits.effective.lower / INCH - effective)).toBeLessThan(0.001);
  });

  // Minor diameter of class 2B, in, least and most: the same tables.
  test.each([
    ["#1-64 UNC", 0.0561, 0.0623],
    ["#2-56 UNC", 0.0667, 0.0737],
    ["15/16-20 UNEF", 0.883, 0.8912],
  ])("the hole of a %s nut agrees with class 2B, at most to three thou", (name, least, most) => {
    const limits = internalLimits(thread(name));
    expect(Math.abs(limits.lower / INCH - least)).toBeLessThan(0.0005);
    expect(Math.abs(limits.upper / INCH - most)).toBeLessThan(0.003);
  });
});

describe("circlips lying free", () => {
  // DIN 471, table of Westfield Fasteners: free diameter with its deviations, and the thickness.
  test.each([
    ["DIN 471 3 x 0.4", 2.55, 2.74, 0.35],
    ["DIN 471 7 x 0.8", 6.32, 6.56, 0.75],
    ["DIN 471 10 x 1", 8.94, 9.4, 0.94],
  ])("%s is %d to %d mm inside when new", (name, lower, upper, thin) => {
    const clip = standardCandidates().find((each) => each.name === name);
    expect((clip?.dimensions.get("inside")?.lower ?? 0) * 1000).toBeCloseTo(lower, 6);
    expect((clip?.dimensions.get("inside")?.upper ?? 0) * 1000).toBeCloseTo(upper, 6);
    expect((clip?.dimensions.get("thickness")?.lower ?? 0) * 1000).toBeCloseTo(thin, 6);
  });

  // DIN 472, table of a circlip maker.
  test.each([
    ["DIN 472 8 x 0.8", 8.6, 9.06],
    ["DIN 472 10 x 1", 10.7, 11.16],
  ])("%s is %d to %d mm outside when new", (name, lower, upper) => {
    const clip = standardCandidates().find((each) => each.name === name);
    expect((clip?.dimensions.get("outside")?.lower ?? 0) * 1000).toBeCloseTo(lower, 6);
    expect((clip?.dimensions.get("outside")?.upper ?? 0) * 1000).toBeCloseTo(upper, 6);
  });
});

describe("the candidates", () => {
  test("are many, of every kind", () => {
    for (const family of families) {
      const count = standardCandidates().filter((each) => each.family === family).length;
      expect([family.name, count > 10]).toEqual([family.name, true]);
    }
  });

  test("state limits around their nominal dimensions, and wear goes one way", () => {
    const wrong = standardCandidates().filter(({ dimensions }) =>
      [...dimensions.values()].some(
        (each) =>
          !(leastOf(each) <= each.lower && each.lower <= each.nominal + 1e-12) ||
          !(each.nominal <= each.upper + 1e-12 && each.upper <= mostOf(each)),
      ),
    );
    expect(wrong.map(({ name }) => name)).toEqual([]);
  });

  test("state only dimensions that their kind lists", () => {
    const unlisted = standardCandidates().flatMap(({ family, name, dimensions }) =>
      [...dimensions.keys()]
        .filter((each) => !family.dimensions.some((listed) => listed.name === each))
        .map((each) => `${name} ${each}`),
    );
    expect(unlisted).toEqual([]);
  });
});

describe("the figures", () => {
  test("are of dimensions that their kind lists, and each has a source", () => {
    for (const { family, dimension, source } of [...madeWithin, ...wornAllowances]) {
      const listed = families.find(({ name }) => name === family)?.dimensions.map(({ name }) => name) ?? [];
      expect(listed).toContain(dimension);
      expect(source).not.toBe("");
    }
  });

  test("have one allowance for wear for each dimension: nothing both shrinks and grows", () => {
    const keys = wornAllowances.map(({ family, dimension }) => `${family} ${dimension}`);
    expect(new Set(keys).size).toBe(keys.length);
  });
});

describe("the names of dimensions", () => {
  test.each([
    ["rolling bearing", "id", "bore"],
    ["rolling bearing", "Outside-Diameter", "outside"],
    ["external thread", "TPI", "pitch"],
    ["external thread", "pitch_diameter", "effective"],
    ["internal thread", "bore", "minor"],
    ["O-ring", "cord", "section"],
    ["shaft circlip", "free", "inside"],
    ["bore circlip", "free", "outside"],
    ["roller chain", "inner_width", "width"],
    ["tyre", "overall", "outside"],
  ])("of a %s, %s is its %s", (kind, name, meaning) => {
    const family = families.find((each) => each.name === kind);
    expect(family && dimensionOfFamily(family, name)?.name).toBe(meaning);
  });

  test("have one meaning in a kind of part, a help and a way to be taken", () => {
    for (const { dimensions } of families) {
      const synonyms = dimensions.flatMap((each) => [...each.synonyms, ...(each.perInch ?? [])]);
      expect(new Set(synonyms).size).toBe(synonyms.length);
      for (const { help, measuring } of dimensions) expect([help, measuring.how]).not.toContain("");
    }
  });
});
