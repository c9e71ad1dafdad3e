import { describe, expect, test } from "vitest";
import {
  nominalStressArea,
  nutProofLoad,
  printedProofLoad,
  threadLength,
  underHeadBearingDiameter,
  yieldLoad,
} from "../../server/trade/bolts.ts";
import { isFaulty } from "../../server/trade/function.ts";
import {
  classTexts,
  nutBears,
  nutClassTexts,
  readClass,
  readNutClass,
  strengthsOf,
  unknownClass,
} from "../../server/trade/strength-class.ts";
import { coarseProofLoads, proofLoadClasses } from "../../server/trade/tables/proof-loads.ts";
import { cls, computed, notes, result, thread, value } from "./answers.ts";

describe("strength classes", () => {
  test("are read as they are written", () => {
    for (const text of classTexts) expect(readClass(text)?.text).toBe(text);
    expect(readClass("class 8.8")?.system).toBe("ISO 898-1");
    expect(readClass("grade 5")?.system).toBe("SAE J429");
    expect(readClass("class A2-70")?.system).toBe("ISO 3506-1");
    expect(readClass("class T")?.system).toBe("British letter");
    expect(readClass("grade 8.8")).toBeUndefined();
    expect(readClass("class 5")).toBeUndefined();
    expect(readClass("8.8")).toBeUndefined();
  });

  test("rise in the order of their numbers", () => {
    for (const names of [
      ["4.6", "5.6", "8.8", "10.9", "12.9"],
      ["P", "R", "S", "T", "V", "X"],
    ]) {
      const tensile = names.map((name) => {
        const strengths = strengthsOf(cls(`class ${name}`), 0.01);
        return isFaulty(strengths) ? Number.NaN : strengths.tensile;
      });
      expect(tensile).toEqual([...tensile].sort((a, b) => a - b));
    }
  });

  test("have proof below yield below tensile strength", () => {
    for (const text of classTexts.filter((each) => each !== unknownClass.text)) {
      const strengths = strengthsOf(cls(text), 0.01);
      if (isFaulty(strengths)) throw new Error(text);
      expect(strengths.proof).toBeLessThanOrEqual(strengths.yield);
      expect(strengths.yield).toBeLessThan(strengths.tensile);
    }
  });

  test("say where their figures are estimates", () => {
    expect(notes("proof_load", thread("3/8 BSF"), cls("class T"))).toContain("from memory");
    expect(notes("proof_load", thread("M8"), cls("class A2-70"))).toContain("0.2 %");
  });

  test("an unknown class gives no load", () => {
    expect(result("proof_load", thread("M8"), unknownClass)).toEqual({
      fault: { kind: "class-unknown", parameter: "class" },
    });
  });

  test("9.8 ends at 16 mm and SAE grades at 1-1/2 in", () => {
    expect(result("proof_load", thread("M18"), cls("class 9.8"))).toMatchObject({
      fault: { kind: "not-in-table" },
    });
    expect(result("proof_load", thread("1-3/4-5 UNC"), cls("grade 8"))).toMatchObject({
      fault: { kind: "not-in-table" },
    });
  });
});

describe("nuts", () => {
  test("are read as they are written", () => {
    for (const text of nutClassTexts) expect(readNutClass(text)?.text).toBe(text);
    expect(readNutClass("class 8.8")).toBeUndefined();
    expect(readNutClass("class 9")).toBeUndefined();
  });

  test.each([
    ["class 8", "class 8.8", true],
    ["class 10", "class 8.8", true],
    ["class 8", "class 10.9", false],
    ["class 05", "class 8.8", false],
    ["class 8", "grade 5", undefined],
  ])("%s on a bolt of %s: %s (ISO 898-2)", (nut, boltClass, expected) => {
    const nutClass = readNutClass(nut);
    expect(nutClass && nutBears(nutClass, cls(boltClass))).toBe(expected);
  });

  test("bear more than the proof load of the bolt they go with", () => {
    for (const [nut, boltClass] of [
      ["8", "8.8"],
      ["10", "10.9"],
      ["12", "12.9"],
    ]) {
      for (const size of ["M6", "M8", "M10", "M12", "M16"]) {
        const nutClass = readNutClass(`class ${nut}`);
        const load = nutClass && nutProofLoad(thread(size), nutClass);
        expect(load).toBeGreaterThan(value("proof_load", thread(size), cls(`class ${boltClass}`)));
      }
    }
  });
});

describe("loads", () => {
  test("the proof loads ISO 898-1 prints agree with stress area times stress within 1 %", () => {
    for (const [diameter, row] of coarseProofLoads) {
      for (const [place, printed] of row.entries()) {
        const boltClass = cls(`class ${proofLoadClasses[place]}`);
        const strengths = strengthsOf(boltClass, diameter / 1000);
        if (printed === undefined || isFaulty(strengths)) continue;
        const product = nominalStressArea(thread(`M${diameter}`)) * strengths.proof;
        expect(Math.abs(printed / product - 1)).toBeLessThan(0.01);
      }
    }
  });

  test("a printed proof load is kept, and said to be one (ISO 898-1: M10 8.8 is 33 700 N, the product 33 640 N)", () => {
    expect(value("proof_load", thread("M10"), cls("class 8.8"))).toBe(33_700);
    expect(notes("proof_load", thread("M10"), cls("class 8.8"))).toContain("ISO 898-1");
    expect(printedProofLoad(thread("M10x1.25"), cls("class 8.8"))).toBeUndefined();
  });

  test("of an inch thread are printed in pounds-force", () => {
    expect(computed("proof_load", thread("3/8-24 UNF"), cls("grade 8")).unit).toBe("lbf");
    expect(computed("proof_load", thread("M8"), cls("class 8.8")).unit).toBeUndefined();
  });

  test("yield lies between proof and tensile load", () => {
    const yieldAt = yieldLoad(thread("M8x1"), cls("class 10.9"));
    if (isFaulty(yieldAt)) throw new Error("no load");
    expect(yieldAt.value).toBeCloseTo(39.2e-6 * 940e6, 6);
    expect(value("tensile_load", thread("M8x1"), cls("class 10.9"))).toBeGreaterThan(yieldAt.value);
  });
});

describe("the plain shank", () => {
  test.each([
    // thread, length, length of thread in mm (ISO 888)
    ["M8", 30, 22],
    ["M10", 125, 26],
    ["M10", 130, 32],
    ["M12", 220, 49],
    ["M8", 16, 16],
  ])("%s x %d has %d mm of thread", (name, length, expected) => {
    expect(threadLength(thread(name), length / 1000) * 1000).toBeCloseTo(expected, 9);
  });

  test.each([
    // thread, length, length of thread in inches (ASME B18.2.1, from memory)
    ["1/2-20 UNF", 3, 1.25],
    ["3/8-24 UNF", 6, 1],
    ["1/2-13 UNC", 7, 1.5],
    ["3/8-24 UNF", 0.75, 0.75],
  ])("%s x %d in has %d in of thread", (name, length, expected) => {
    expect(threadLength(thread(name), length * 0.0254) / 0.0254).toBeCloseTo(expected, 9);
  });
});

describe("the ring under the head", () => {
  test("is that of ISO 4014 and ISO 273 for metric bolts, as VDI 2230 tables use it", () => {
    // Bearing diameters used with the published VDI 2230 torques.
    for (const [name, expected] of [
      ["M8", 10.32],
      ["M10", 12.82],
      ["M12", 15.06],
      ["M14", 17.57],
      ["M16", 19.99],
    ] as const) {
      const { value: diameter } = underHeadBearingDiameter(thread(name));
      expect(Math.abs(diameter * 1000 - expected)).toBeLessThanOrEqual(0.0051);
    }
  });

  test("is 1.25 d where there is no head table, and says so", () => {
    const { value: diameter, source } = underHeadBearingDiameter(thread("3/8-24 UNF"));
    expect(diameter).toBeCloseTo(1.25 * 9.525e-3, 12);
    expect(source).toContain("1.25 d");
  });
});
