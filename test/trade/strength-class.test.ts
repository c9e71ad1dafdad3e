/** Strengths at the ends of the table's ranges, what is not in it, and how a class may be written. */
import { describe, expect, test } from "vitest";
import {
  nutBears,
  nutProofStress,
  readClass,
  readNutClass,
  strengthsOf,
  unknownClass,
} from "../../server/trade/strength-class.ts";
import { cls } from "./answers.ts";

const MPA = 1e6;

/** The class of a nut; one that cannot be read fails the test. */
function nut(text: string) {
  const read = readNutClass(text);
  if (read === undefined) throw new Error(`no class of a nut: ${text}`);
  return read;
}

describe("a class as it is written", () => {
  test("may have more white space about it", () => {
    expect(readClass("  class   8.8 ")?.text).toBe("class 8.8");
    expect(readNutClass("  class   10 ")?.text).toBe("class 10");
  });

  test("is one of the table, whole", () => {
    expect(readClass("class 8.9")).toBeUndefined();
    expect(readClass("class unknown")).toBe(unknownClass);
    expect(readNutClass("a class 8")).toBeUndefined();
    expect(readNutClass("class 8 or so")).toBeUndefined();
    expect(readNutClass("class 7")).toBeUndefined();
    expect(readNutClass("class 8")).toEqual({ kind: "nut class", name: "8", text: "class 8" });
  });
});

describe("strengths at a diameter", () => {
  // ISO 898-1:2013, table 3: class 8.8 to 16 mm and above it.
  test("change above the diameter that the standard names, not at it", () => {
    expect(strengthsOf(cls("class 8.8"), 0.016)).toEqual({
      proof: 580 * MPA,
      yield: 640 * MPA,
      tensile: 800 * MPA,
    });
    expect(strengthsOf(cls("class 8.8"), 0.0161)).toEqual({
      proof: 600 * MPA,
      yield: 660 * MPA,
      tensile: 830 * MPA,
    });
  });

  test("of inches are not lost to rounding: 3/4 in is in the row up to 3/4 in", () => {
    const { tensile } = strengthsOf(cls("grade 2"), 0.75 * 0.0254) as { readonly tensile: number };
    // 74 ksi (SAE J429 through Shigley & Mischke), 1 ksi = 6.894757 MPa.
    expect(tensile / MPA).toBeCloseTo(510.212, 3);
  });

  test("beyond the table are told with how far it goes", () => {
    expect(strengthsOf(cls("grade 2"), 0.04)).toEqual({
      fault: {
        kind: "not-in-table",
        wanted: "grade 2 at 40.0 mm",
        table: "SAE J429",
        known: ["grade 2 up to 38.1 mm"],
      },
    });
  });

  test("of a class with one row are told with the end of that row", () => {
    expect(strengthsOf(cls("class 9.8"), 0.02)).toMatchObject({
      fault: { known: ["class 9.8 up to 16.0 mm"] },
    });
  });

  test("of a class that is not in the table are told without a range", () => {
    const none = { kind: "class", system: "ISO 898-1", name: "7.7", text: "class 7.7" } as const;
    expect(strengthsOf(none, 0.01)).toEqual({
      fault: { kind: "not-in-table", wanted: "class 7.7 at 10.0 mm", table: "ISO 898-1", known: [] },
    });
  });

  test("of a class that nobody knows are not guessed", () => {
    expect(strengthsOf(unknownClass, 0.01)).toEqual({ fault: { kind: "class-unknown", parameter: "class" } });
  });

  test("are told with what has to be said beside them, where there is something", () => {
    expect(strengthsOf(cls("class A2-70"), 0.01)).toMatchObject({
      remark: expect.stringContaining("ISO 3506-1"),
    });
    expect(strengthsOf(cls("class 10.9"), 0.01)).not.toHaveProperty("remark");
  });
});

describe("the stress under proof load of a nut", () => {
  // ISO 898-2, style 1, coarse thread.
  test("changes above the diameter that the table names, not at it", () => {
    expect(nutProofStress(nut("class 8"), 0.004)).toBe(800 * MPA);
    expect(nutProofStress(nut("class 8"), 0.016)).toBe(880 * MPA);
    expect(nutProofStress(nut("class 8"), 0.0161)).toBe(920 * MPA);
    expect(nutProofStress(nut("class 8"), 0.039)).toBe(920 * MPA);
  });

  test("is not known beyond it, nor of a class without one", () => {
    expect(nutProofStress(nut("class 8"), 0.04)).toBeUndefined();
    expect(nutProofStress({ kind: "nut class", name: "7", text: "class 7" }, 0.01)).toBeUndefined();
  });
});

describe("a nut bears a bolt", () => {
  // ISO 898-2: a nut's class is the first figure of the strongest bolt that it goes with; thin nuts bear less.
  test("of its class and below, a thin one none", () => {
    expect(nutBears(nut("class 8"), cls("class 8.8"))).toBe(true);
    expect(nutBears(nut("class 8"), cls("class 10.9"))).toBe(false);
    expect(nutBears(nut("class 10"), cls("class 8.8"))).toBe(true);
    expect(nutBears(nut("class 04"), cls("class 4.6"))).toBe(false);
    expect(nutBears(nut("class 8"), cls("grade 5"))).toBeUndefined();
  });
});
