import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compatible, dimensionNamed } from "../../server/quantities/dimension.ts";
import { unit } from "../../server/quantities/unit.ts";
import { tradeFunction, tradeFunctions, tradeNames } from "../../server/trade/catalogue.ts";
import type { ArgumentValue, Parameter } from "../../server/trade/function.ts";
import { materialNames, readMaterial } from "../../server/trade/materials.ts";
import { classTexts, readClass } from "../../server/trade/strength-class.ts";
import { threadsOfSeries } from "../../server/trade/thread.ts";

/** The functions that the trade asks for, by subject. */
const wanted = `
  pitch major_diameter pitch_diameter effective_diameter minor_diameter root_diameter stress_area tap_drill proof_load
  yield_load tensile_load
  preload preload_friction torque_for torque_for_friction torque_of_class wrench_setting thread_engagement protrusion
  limits_of tolerance_grade fit_range thermal_growth heat_to_fit interference_pressure press_force
  expanded combine total_runout
  spring_rate spring_series spring_parallel wheel_rate ride_frequency
  torsion_stress twist
  overall_ratio road_speed engine_speed_at tyre_diameter chain_length chain_centres piston_speed
  piston_area line_pressure clamp_force brake_torque bar_share brake_split pedal_travel
  toe_angle toe_distance camber_from_gauge castor_from_swing caster_from_swing ackermann cross_weight side_share
  axle_share cg_height
  wire_area wire_resistance voltage_drop fuse_for wire_for
  swept_volume compression_ratio clearance_volume ring_gap_range freeze_point`
  .trim()
  .split(/\s+/);

/** Values of a parameter, inside its range and a little beyond, of the right kind and of a wrong one. */
function valuesOf(parameter: Parameter): fc.Arbitrary<ArgumentValue> {
  switch (parameter.is) {
    case "quantity":
    case "any quantity":
    case "number": {
      const { min, max } = parameter;
      const span = max - min;
      return fc.oneof(
        {
          weight: 8,
          arbitrary: fc
            .double({ min, max, noNaN: true })
            .map((value) => ("whole" in parameter ? Math.round(value) : value)),
        },
        { weight: 1, arbitrary: fc.constantFrom(min, max) },
        {
          weight: 1,
          arbitrary: fc.constantFrom(min - span, max + span, Number.NaN, Number.POSITIVE_INFINITY),
        },
      );
    }
    case "thread":
      return fc.constantFrom(...(["M", "UNC", "UNF", "BSF", "BA"] as const).flatMap(threadsOfSeries));
    case "class":
      return fc.constantFrom(...classTexts.flatMap((text) => readClass(text) ?? []));
    case "material":
      return fc.constantFrom(...materialNames.flatMap((name) => readMaterial(name) ?? []));
    case "friction":
      return fc.double({ min: 0, max: 1, noNaN: true });
    case "text":
      return fc.oneof(
        fc.constantFrom("52 H7", "25 h6", "52 H7/p6", "IT7", "AWG 14", "185/70R13", "propylene", ""),
        fc.string(),
      );
  }
}

describe("the catalogue of functions", () => {
  test("holds every function of the trade", () => {
    expect(wanted.filter((name) => !tradeNames.includes(name))).toEqual([]);
  });

  test("has no name twice", () => {
    expect(tradeNames).toEqual(tradeFunctions().flatMap((entry) => [entry.name, ...entry.aliases]));
  });

  test("finds each by its names, which stand with their subject", () => {
    for (const entry of tradeFunctions())
      for (const name of [entry.name, ...entry.aliases])
        expect([name, tradeFunction(name)]).toEqual([name, entry]);
    expect(tradeFunction("gauge")).toBeUndefined();
  });

  test.each(tradeFunctions().map((entry) => [entry.name, entry] as const))("%s is documented", (_, entry) => {
    expect(entry.name).toMatch(/^[a-z][a-z_]*$/);
    for (const text of [entry.summary, entry.formula, entry.source]) expect(text.trim()).not.toBe("");
    expect(entry.summary).toMatch(/\.$/);
    for (const parameter of entry.parameters) expect(parameter.doc).toMatch(/\.$/);
    expect(
      entry.parameters.filter((parameter) => "min" in parameter && !(parameter.min < parameter.max)),
    ).toEqual([]);
    const names = entry.parameters.map((parameter) => parameter.name);
    expect(new Set(names).size).toBe(names.length);
    const optional = entry.parameters.map((parameter) => parameter.optional === true);
    expect(optional).toEqual([...optional].sort());
    expect(entry.parameters.slice(0, -1).some((parameter) => parameter.variadic)).toBe(false);
  });

  test.each(tradeFunctions().map((entry) => [entry.name, entry] as const))(
    "%s answers any arguments with a finite value or a fault",
    (_, entry) => {
      fc.assert(
        fc.property(fc.tuple(...entry.parameters.map(valuesOf)), (values) => {
          const result = entry.call(values);
          if ("fault" in result) return true;
          const { value } = result;
          return typeof value === "number"
            ? Number.isFinite(value)
            : Number.isFinite(value.lower) && value.lower <= value.upper;
        }),
        { numRuns: 60 },
      );
    },
  );

  test("every unit that a function names is one of the dimension it is said to have", () => {
    const named = tradeFunctions().flatMap(({ name, parameters, returns }) => [
      ...parameters.filter((parameter) => parameter.is === "quantity").map((each) => ({ ...each, name })),
      ...(returns.is === "quantity" || returns.is === "limits" ? [{ ...returns, name }] : []),
    ]);
    const wrong = named.filter(
      (each) => !compatible(unit(each.unit).dimension, dimensionNamed(each.dimension)),
    );
    expect(wrong).toEqual([]);
  });

  test("too few and too many arguments are told with how many are due", () => {
    expect(tradeFunction("preload")?.call([54])).toEqual({
      fault: { kind: "wrong-count", given: 1, least: 3, most: 3 },
    });
    expect(tradeFunction("piston_area")?.call([0.038, 2, 3])).toEqual({
      fault: { kind: "wrong-count", given: 3, least: 1, most: 2 },
    });
    expect(tradeFunction("combine")?.call([])).toMatchObject({ fault: { kind: "wrong-count", least: 1 } });
  });

  test("a value outside its range is told with the range", () => {
    expect(tradeFunction("wrench_setting")?.call([50, 10, 0.1])).toEqual({
      fault: { kind: "out-of-range", parameter: "wrench_length", value: 10, min: 0.05, max: 3, unit: "mm" },
    });
    expect(tradeFunction("freeze_point")?.call([0.75])).toMatchObject({
      fault: { kind: "out-of-range", parameter: "share", max: 0.6, unit: "%" },
    });
    expect(tradeFunction("swept_volume")?.call([0.068, 0.075, 3.5])).toMatchObject({
      fault: { kind: "out-of-range", parameter: "cylinders" },
    });
  });

  /** Something that a parameter takes. */
  function good(parameter: Parameter): ArgumentValue {
    switch (parameter.is) {
      case "thread":
        return threadsOfSeries("M")[40] ?? "";
      case "class":
        return classTexts.flatMap((text) => readClass(text) ?? [])[0] ?? "";
      case "material":
        return readMaterial("steel") ?? "";
      case "friction":
        return 0.2;
      case "text":
        return parameter.expected;
      default:
        return Math.round((parameter.min + parameter.max) / 2) || parameter.max;
    }
  }

  /** What another argument may narrow down further: a bore that is as large as its shaft. */
  const NARROWER = new Set(["torsion_stress inner", "twist inner", "cg_height rise"]);

  const places = tradeFunctions().flatMap(({ name, parameters, call }) =>
    parameters.map((parameter, place) => ({
      what: `${name} ${parameter.name}`,
      parameter,
      /** The function called with a value at this place, the others being good. */
      called: (value: ArgumentValue) =>
        call(parameters.map((other, at) => (at === place ? value : good(other)))),
    })),
  );

  test.each(places)("$what of another kind is told, whatever it is instead", ({ parameter, called }) => {
    const others = (["thread", "class", "material", "text"] as const).filter((is) => is !== parameter.is);
    for (const is of others) {
      const value = good({ is, expected: '"52 H7"', name: "", doc: "" } as Parameter);
      const fault = { kind: "wrong-kind", parameter: parameter.name, expected: parameter.is };
      expect(called(value)).toEqual({ fault });
    }
  });

  test.each(places.filter(({ parameter }) => "min" in parameter || parameter.is === "friction"))(
    "$what is told with its range and its unit on either side of it",
    ({ what, parameter, called }) => {
      const { min, max } = "min" in parameter ? parameter : { min: 0.05, max: 0.6 };
      const unit = "unit" in parameter ? { unit: parameter.unit } : {};
      const step = (max - min) / 1000;
      for (const value of [min - step, max + step])
        expect(called(value)).toEqual({
          fault: { kind: "out-of-range", parameter: parameter.name, value, min, max, ...unit },
        });
      for (const value of NARROWER.has(what) ? [min] : [min, max])
        expect(called(value)).not.toMatchObject({
          fault: { kind: "out-of-range", parameter: parameter.name, max },
        });
    },
  );

  test("a value of the wrong kind is told", () => {
    expect(tradeFunction("pitch")?.call([10])).toEqual({
      fault: { kind: "wrong-kind", parameter: "thread", expected: "thread" },
    });
    expect(tradeFunction("limits_of")?.call([52])).toMatchObject({ fault: { kind: "wrong-kind" } });
  });
});
