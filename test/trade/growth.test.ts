import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { heatingNotes, heatToFit } from "../../server/trade/growth.ts";
import { materialNames } from "../../server/trade/materials.ts";
import { material, notes, result, value } from "./answers.ts";

/** What a metre of steel grows in a kelvin, by the table's coefficient. */
const perKelvin = material("steel").expansion ?? Number.NaN;

const kelvin = (celsius: number) => celsius + 273.15;

describe("growth by heat", () => {
  test("52 mm of aluminium grow 0.12 mm in 100 K", () => {
    expect(value("thermal_growth", 0.052, material("aluminium"), 100)).toBeCloseTo(0.0001196, 10);
  });

  test("cooling shrinks as heating grows", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 200, noNaN: true }), (rise) => {
        const grown = value("thermal_growth", 0.05, material("steel"), rise);
        return Math.abs(grown + value("thermal_growth", 0.05, material("steel"), -rise)) < 1e-15;
      }),
    );
  });

  test("a material without one figure is refused", () => {
    expect(result("thermal_growth", 0.05, material("rubber"), 50)).toMatchObject({
      fault: { kind: "not-in-table", wanted: "coefficient of expansion of rubber", known: [] },
    });
    expect(heatToFit(3e-5, 0.05, material("rubber"), 0)).toMatchObject({ fault: { kind: "not-in-table" } });
    expect(heatingNotes(0.05, material("rubber"), { value: kelvin(80) })[0]).toBe(
      "from 20 °C; with 0.05 mm more to slip it on: 80 °C",
    );
  });

  test("the materials of the notation are all there", () => {
    const words =
      "steel cast_iron aluminium magnesium titanium brass bronze copper copper_nickel composite rubber plastic glass timber leather";
    expect(words.split(" ").filter((word) => !materialNames.includes(word))).toEqual([]);
  });
});

describe("heating to fit", () => {
  test("at the temperature it names, the bore has grown by the interference", () => {
    const temperature = value("heat_to_fit", 3e-5, 0.052, material("aluminium"));
    expect(value("thermal_growth", 0.052, material("aluminium"), temperature - kelvin(20))).toBeCloseTo(
      3e-5,
      12,
    );
  });

  test("says what it takes to slip it on, and what a bearing may see", () => {
    const said = notes("heat_to_fit", 3e-5, 0.052, material("aluminium"));
    expect(said).toContain("with 0.05 mm more to slip it on: 87 °C");
    expect(said).toContain("bearings to 120 °C at most");
    expect(said).not.toContain("above what a bearing may see");
    expect(notes("heat_to_fit", 8e-5, 0.052, material("steel"))).toContain("above what a bearing may see");
  });
});

describe("heating with room to slip it on", () => {
  test("takes the interference and the clearance together", () => {
    expect(heatToFit(6e-4, 1, material("steel"), 6e-4)).toBeCloseTo(kelvin(20) + 1.2e-3 / perKelvin, 6);
  });

  test("is above what a bearing may see beyond 120 °C, not at it", () => {
    const limit = kelvin(120) - 5e-5 / perKelvin;
    const said = (temperature: number) => heatingNotes(1, material("steel"), { value: temperature });
    expect(said(limit - 0.01)).toHaveLength(2);
    expect(said(limit + 0.01)[2]).toBe("this is above what a bearing may see");
  });
});

describe("press fits", () => {
  const steel = material("steel");

  test("a solid shaft in an endless hub of the same steel: p = E δ / 2d", () => {
    // Lamé with D much larger than d and no bore; Poisson's ratio cancels.
    const pressure = value("interference_pressure", 4e-5, 0.04, 4, 0, steel, steel);
    expect(pressure / ((206e9 * 4e-5) / (2 * 0.04))).toBeCloseTo(1, 3);
  });

  test("pressure rises with interference and with the wall of the hub, and falls with a bore in the shaft", () => {
    const base = value("interference_pressure", 4e-5, 0.04, 0.08, 0, steel, steel);
    expect(value("interference_pressure", 8e-5, 0.04, 0.08, 0, steel, steel)).toBeCloseTo(2 * base, 3);
    expect(value("interference_pressure", 4e-5, 0.04, 0.12, 0, steel, steel)).toBeGreaterThan(base);
    expect(value("interference_pressure", 4e-5, 0.04, 0.08, 0.03, steel, steel)).toBeLessThan(base);
  });

  test("press_force is friction times pressure times the area of the fit", () => {
    const pressure = value("interference_pressure", 4e-5, 0.04, 0.08, 0, steel, steel);
    const force = value("press_force", 4e-5, 0.04, 0.08, 0, steel, steel, 0.03, 0.12);
    expect(force).toBeCloseTo(0.12 * pressure * Math.PI * 0.04 * 0.03, 3);
  });

  test("press_force shows the usual caution beside its figure", () => {
    expect(result("press_force", 4e-5, 0.04, 0.08, 0, steel, steel, 0.03, 0.12)).toMatchObject({
      notes: [expect.stringContaining("eye protection")],
    });
  });

  test("a material without a modulus of elasticity is refused, on either side", () => {
    const faulty = { fault: { kind: "not-in-table", wanted: "modulus of elasticity of rubber" } };
    const rubber = material("rubber");
    expect(result("interference_pressure", 4e-5, 0.04, 0.08, 0, rubber, steel)).toMatchObject(faulty);
    expect(result("interference_pressure", 4e-5, 0.04, 0.08, 0, steel, rubber)).toMatchObject(faulty);
  });

  test("a hub no larger than its bore and a bore as large as the shaft are refused", () => {
    expect(result("interference_pressure", 4e-5, 0.04, 0.04, 0, steel, steel)).toMatchObject({
      fault: { kind: "out-of-range", parameter: "outer", min: 0.04 },
    });
    expect(result("interference_pressure", 4e-5, 0.04, 0.08, 0.04, steel, steel)).toMatchObject({
      fault: { kind: "out-of-range", parameter: "inner", max: 0.04 },
    });
  });
});
