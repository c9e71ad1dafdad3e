import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { describeFriction, frictionWords, readFriction } from "../../server/trade/friction.ts";
import { threadsOfSeries } from "../../server/trade/thread.ts";
import { engagementNeeded, preload, torqueFor, torqueOfClass } from "../../server/trade/tightening.ts";
import { cls, computed, material, notes, result, thread, value } from "./answers.ts";

const anyThread = fc.constantFrom(...(["M", "UNF", "BSF", "BA"] as const).flatMap(threadsOfSeries));
const anyTorque = fc.double({ min: 0.1, max: 500, noNaN: true });
const anyFactor = fc.double({ min: 0.05, max: 0.6, noNaN: true });
const anyFriction = fc.double({ min: 0.02, max: 0.5, noNaN: true });

function within(actual: number, expected: number): boolean {
  return Math.abs(actual - expected) <= 1e-9 * Math.abs(expected);
}

describe("torque and preload", () => {
  test("54 N.m on M10x1.25 at a nut factor of 0.2 is 27 kN", () => {
    expect(value("preload", 54, thread("M10x1.25"), 0.2)).toBeCloseTo(27_000, 6);
  });

  test("undo each other, in the short form", () => {
    fc.assert(
      fc.property(anyTorque, anyThread, anyFactor, (torque, bolt, factor) =>
        within(torqueFor(preload(torque, bolt, factor), bolt, factor), torque),
      ),
    );
  });

  test("undo each other, in the long form", () => {
    fc.assert(
      fc.property(anyTorque, anyThread, anyFriction, anyFriction, (torque, bolt, muThread, muHead) => {
        const force = result("preload_friction", torque, bolt, muThread, muHead);
        if ("fault" in force || typeof force.value !== "number" || force.value > 5e6) return true;
        return within(value("torque_for_friction", force.value, bolt, muThread, muHead), torque);
      }),
    );
  });

  test("more friction leaves less preload", () => {
    const bolt = thread("M8");
    expect(value("preload", 24, bolt, 0.18)).toBeLessThan(value("preload", 24, bolt, 0.12));
    expect(value("preload_friction", 24, bolt, 0.14, 0.12)).toBeLessThan(
      value("preload_friction", 24, bolt, 0.1, 0.12),
    );
  });

  test("a computed preload says its nut factor, the scatter of torque and that the maker's figure comes first", () => {
    const said = notes("preload", 54, thread("M10x1.25"), 0.2);
    expect(said).toContain("nut factor 0.20");
    expect(said).toContain("± 25 to 35 %");
    // 27 kN less and more 35 %
    expect(said).toContain("17.6 kN to 36.5 kN");
    expect(said).toContain("maker's figure comes first");
  });

  test("a nut factor out of the published range is refused with the range", () => {
    expect(result("preload", 54, thread("M10"), 2)).toEqual({
      fault: { kind: "out-of-range", parameter: "nut_factor", value: 2, min: 0.05, max: 0.6 },
    });
  });

  test("the bearing diameter that was assumed is said, and is not when it was given", () => {
    expect(notes("torque_for_friction", 20_000, thread("M8"), 0.12, 0.12)).toContain("10.32 mm");
    expect(notes("torque_for_friction", 20_000, thread("M8"), 0.12, 0.12, 0.012)).not.toContain("10.32 mm");
  });
});

describe("friction words", () => {
  test("stand for their figures, low and high", () => {
    expect(readFriction("dry")).toMatchObject({ kind: "friction", low: 0.2, high: 0.25 });
    expect(readFriction("oiled")).toMatchObject({ low: 0.18, high: 0.18 });
    expect(readFriction("moly")).toMatchObject({ low: 0.12, high: 0.12 });
    expect(readFriction("wet")).toBeUndefined();
  });

  test("threadlocker has no figure: its maker gives one", () => {
    expect(readFriction("threadlocker")).toMatchObject({ kind: "no figure" });
  });

  test("print figures and source where they are used", () => {
    const dry = readFriction("dry");
    if (dry?.kind !== "friction") throw new Error("no figures");
    expect(describeFriction(dry)).toMatch(/^dry: nut factor 0\.20 to 0\.25 \(.+\)$/);
    expect(notes("torque_for", 20_000, thread("M8"), dry)).toContain("dry: nut factor 0.20 to 0.25");
    for (const word of frictionWords) expect(readFriction(word)?.source).not.toBe("");
  });
});

describe("torque from class", () => {
  test("is that of 75 % of proof load", () => {
    const bolt = thread("M10x1.25");
    const proof = value("proof_load", bolt, cls("class 8.8"));
    const torque = torqueOfClass(bolt, cls("class 8.8"), 0.2);
    expect("value" in torque && within(preload(torque.value, bolt, 0.2), 0.75 * proof)).toBe(true);
    expect(notes("torque_of_class", bolt, cls("class 8.8"), 0.2)).toContain("75 % of proof load");
  });

  test("names the edition where VDI 2230 is followed", () => {
    expect(notes("torque_of_class_friction", thread("M8x1"), cls("class 8.8"), 0.12, 0.12)).toContain(
      "VDI 2230, 2001",
    );
  });

  test("needs a class that is known", () => {
    expect(result("torque_of_class", thread("M8"), cls("class unknown"), 0.2)).toMatchObject({
      fault: { kind: "class-unknown" },
    });
  });
});

describe("a wrench with an extension", () => {
  test("is set lower by wrench / (wrench + extension), and as wanted without one", () => {
    expect(value("wrench_setting", 60, 0.4, 0.1)).toBeCloseTo(48, 9);
    expect(value("wrench_setting", 60, 0.4, 0)).toBe(60);
  });
});

describe("thread engagement", () => {
  test.each([
    ["class 8.8", "steel", 1],
    ["class 8.8", "cast_iron", 1.3],
    ["class 8.8", "aluminium", 2],
    ["class 8.8", "magnesium", 2.5],
    ["class 10.9", "steel", 1.25],
    ["class 12.9", "aluminium", 2.5],
    ["grade 5", "aluminium", 2],
    ["grade 8", "aluminium", 2.5],
    ["class A2-70", "steel", 1],
  ])("%s in %s takes %d d (common practice, no source)", (boltClass, word, factor) => {
    const needed = engagementNeeded(cls(boltClass), material(word), 0.008);
    expect("value" in needed && needed.value).toBeCloseTo(factor * 0.008, 12);
  });

  test("in a soft material is refused: an insert is needed", () => {
    expect(result("thread_engagement", thread("M8"), cls("class 8.8"), material("plastic"))).toMatchObject({
      fault: { kind: "not-in-table", known: ["steel", "cast_iron", "aluminium", "magnesium"] },
    });
    expect(result("thread_engagement", thread("M8"), cls("class 10.9"), material("magnesium"))).toMatchObject(
      {
        fault: { known: ["steel", "aluminium"] },
      },
    );
  });
});

test("protrusion is what is left of the bolt, negative inside the nut", () => {
  expect(computed("protrusion", 0.03, 0.014, 0.0032, 0.008).value).toBeCloseTo(0.0048, 12);
  expect(value("protrusion", 0.02, 0.014, 0.0032, 0.008)).toBeLessThan(0);
});
