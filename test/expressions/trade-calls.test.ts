import { describe, expect, test } from "vitest";
import { describeFunction } from "../../server/expressions/function-description.ts";
import { functionExamples } from "../../server/expressions/function-examples.ts";
import { tradeFunction, tradeFunctions, tradeNames } from "../../server/trade/catalogue.ts";
import { fault, notes, number, shown, value } from "./calculated.ts";

describe("every function of the trade", () => {
  test("has one example, and there is no example of nothing", () => {
    expect([...functionExamples.keys()].sort()).toEqual(
      tradeFunctions()
        .map(({ name }) => name)
        .sort(),
    );
  });

  test.each(tradeFunctions().map(({ name }) => name))("%s can be called as its example does", (name) => {
    const example = functionExamples.get(name) ?? "";
    expect(example).toContain(`${name}(`);
    expect(["quantity", "limits"]).toContain(value(example).kind);
    expect(notes(example).some((note) => note.startsWith(`${name}: `))).toBe(true);
  });

  test("is found by its other names too", () => {
    for (const name of tradeNames) {
      expect(describeFunction(name)?.name).toBe(tradeFunction(name)?.name);
    }
    expect(shown("effective_diameter(M10)")).toBe(shown("pitch_diameter(M10)"));
    expect(shown("caster_from_swing(1.2 deg, -1.6 deg, 20 deg)")).toBe("4.09 deg");
  });
});

describe("published values through expressions", () => {
  test.each([
    // ISO 898-1:2013, table 4: proof load of M10, class 8.8, coarse thread: 33700 N.
    ["proof_load(M10, class 8.8) in N", "33700 N"],
    // ISO 898-1:2013, table 4: nominal stress area of M10: 58.0 mm2.
    ["round(stress_area(M10), 1)", "58.0 mm2"],
    // ISO 286-1:2010, table 1: IT7 over 50 up to 80 mm is 30 µm.
    ['tolerance_grade(52 mm, "IT7") in µm', "30 µm"],
    // ASTM B258: 14 AWG has 2.08 mm2.
    ["round(wire_area(AWG 14), 2)", "2.08 mm2"],
    // ISO 724: M10 has d2 = 9.026 mm and D1 = 8.376 mm.
    ["round(pitch_diameter(M10), 3)", "9.026 mm"],
    ["round(minor_diameter(M10), 3)", "8.376 mm"],
    // BS 93: 2 BA is 4.7 mm at a pitch of 0.81 mm.
    ["major_diameter(2 BA)", "4.7 mm"],
    ["pitch(2 BA)", "0.81 mm"],
    // JCGM 100:2008, F.2.2.1: a resolution r gives u = 0.29 r, so U = 0.58 r at k = 2.
    ["round(expanded(1 mm), 2)", "0.58 mm"],
  ])("%s is %s", (text, expected) => {
    expect(shown(text)).toBe(expected);
  });
});

describe("arguments", () => {
  test("come in whatever unit is at hand", () => {
    const metric = number("wrench_setting(54 N.m, 300 mm, 50 mm) in N.m");
    expect(number("wrench_setting(54 N.m, 0.3 m, 5 cm) in N.m")).toBeCloseTo(metric, 12);
    expect(number("wrench_setting(54 N.m, 300/25.4 * 1 in, 50 mm) in N.m")).toBeCloseTo(metric, 9);
    expect(shown("road_speed(3000 rpm, 4, 2 m)")).toBe(shown("road_speed(50 Hz, 4, 2 m)"));
    expect(shown("toe_distance(20 arcmin, 340 mm)")).toBe(shown("toe_distance(1/3 * 1 deg, 340 mm)"));
    expect(shown("freeze_point(40 %)")).toBe(shown("freeze_point(0.4)"));
    expect(shown("wire_resistance(2.5 mm2, 3.2 m, 140 degF)")).toBe(
      shown("wire_resistance(2.5 mm2, 3.2 m, 60 degC)"),
    );
  });

  test("may be expressions", () => {
    expect(shown("preload(2 * 27 N.m, M10x1.25, 0.1 + 0.1)")).toBe(shown("preload(54 N.m, M10x1.25, 0.2)"));
    expect(shown("preload(200 N * 0.27 m, M10x1.25, 0.2)")).toBe(shown("preload(54 N.m, M10x1.25, 0.2)"));
    expect(shown("wire_resistance(wire_area(AWG 14), 3.2 m)")).toBe("0.0265 ohm");
  });

  test("a bare word is the material, the friction or the class of its parameter", () => {
    expect(shown("thermal_growth(300 mm, steel, 60 K)")).toBe("0.211 mm");
    expect(notes("preload(54 N.m, M10, oiled)")[0]).toMatch(/^oiled: nut factor 0\.18 \(/);
    expect(shown("proof_load(3/8 BSF, T)")).toBe(shown("proof_load(3/8 BSF, class T)"));
    expect(shown('thermal_growth(300 mm, "steel", 60 K)')).toBe("0.211 mm");
    expect(shown('preload(54 N.m, "M10x1.25", 0.2)')).toBe("27 kN");
  });

  test("a word is one only where the parameter takes it", () => {
    expect(shown("steel")).toBe("unknown-name at steel");
    expect(shown("preload(steel, M10, 0.2)")).toBe("unknown-name at steel");
    expect(fault("thermal_growth(300 mm, steal, 60 K)")).toMatchObject({
      code: "unknown-name",
      message: "nothing is called steal here; did you mean steel?",
      fixes: [{ text: "steel" }],
    });
  });

  test("a temperature where a rise is due is a rise, and said to be", () => {
    expect(shown("thermal_growth(300 mm, steel, 60 degC)")).toBe("0.211 mm");
    expect(notes("thermal_growth(300 mm, steel, 60 degC)")[0]).toBe(
      "60 degC is read as a rise, not as a reading",
    );
    expect(shown("thermal_growth(300 mm, steel, 80 degC - 20 degC)")).toBe("0.211 mm");
  });

  test("a wire gauge goes where an area is due", () => {
    expect(shown("voltage_drop(11 A, AWG 14, 3.2 m)")).toBe(
      shown("voltage_drop(11 A, wire_area(AWG 14), 3.2 m)"),
    );
  });

  test("a bolt goes where a thread is due, with its length left aside", () => {
    expect(shown("preload(54 N.m, M10x1.25x45, 0.2)")).toBe("27 kN");
    expect(shown("pitch(3/8-24 UNF x 1-1/4 in)")).toBe(shown("pitch(3/8-24 UNF)"));
  });
});

describe("results", () => {
  test("come in the author's unit where an argument has the dimension of the result", () => {
    expect(shown("wrench_setting(40 lbf.ft, 12 in, 3 in)")).toBe("32 lbf.ft");
    expect(shown("wrench_setting(5.5 kgf.m, 300 mm, 50 mm)")).toBe("4.71 kgf.m");
    expect(shown("spring_series(150 lbf/in, 300 lbf/in)")).toBe("100 lbf/in");
    expect(shown("clearance_volume(25 in3, 9.5)")).toBe("2.94 in3");
  });

  test("in the customary one by powers of ten, and lengths in mm or in", () => {
    expect(shown("clearance_volume(0.274 l, 9.5)")).toBe("32.2 cc");
    expect(shown("thermal_growth(1 m, steel, 50 K)")).toBe("0.585 mm");
    expect(shown("thermal_growth(4 ft, steel, 50 K)")).toBe("0.0281 in");
  });

  test("imperial where all arguments are", () => {
    expect(shown("torsion_stress(300 lbf.ft, 1 in, 0 in) in psi")).toBe(
      shown("torsion_stress(300 lbf.ft, 1 in, 0 in)"),
    );
    expect(shown("preload(40 lbf.ft, 3/8-24 UNF, 0.2)")).toBe("6400 lbf");
    expect(shown("preload(54 N.m, 3/8-24 UNF, 0.2)")).toMatch(/ kN$/);
    expect(shown("ring_gap_range(2.75 in)")).toBe("0.00825 .. 0.01100 in");
  });

  test("of an inch thread in inches, of a metric one in mm", () => {
    expect(shown("round(tap_drill(3/8-24 UNF, 75 %), 3)")).toBe("0.334 in");
    expect(shown("round(tap_drill(M10, 75 %), 2)")).toBe("8.54 mm");
  });

  test("with as many figures as the least precise argument, at least three; counts and threads do not count", () => {
    expect(shown("piston_area(38 mm, 2)")).toBe("2270 mm2");
    expect(shown("piston_area(38.10 mm, 2)")).toBe("2280 mm2");
    expect(shown("spring_rate(12.00 mm, 100.0 mm, 6.500, 79.30 GPa)")).toBe("31.62 N/mm");
    expect(shown("pitch(3/8-24 UNF) in mm")).toBe("1.05833 mm");
  });

  test("that are nought but for the rounding of binary floats are nought", () => {
    expect(shown("protrusion(41 mm, 30 mm, 3 mm, 8 mm)")).toBe("0 mm");
    expect(shown("total_runout(0.3 mm, 0.3 mm)")).toBe("0 mm");
  });

  test("that follow from readings of temperature are differences", () => {
    expect(shown("total_runout(78 degC, 20 degC)")).toBe("58 K");
    expect(shown("expanded(0.1 degC)")).toBe("0.0577 K");
    expect(shown("heat_to_fit(0.03 mm, 52 mm, aluminium, 0.05 mm)")).toBe("86.9 degC");
    expect(shown("heat_to_fit(0.001 in, 2 in, aluminium, 0.002 in)")).toBe("185 degF");
  });

  test("say the figures used, the caution and the source, once each", () => {
    const said = notes("preload(54 N.m, M10, oiled) - preload(50 N.m, M10, oiled)");
    expect(new Set(said).size).toBe(said.length);
    expect(said).toContain("an estimate: the maker's figure comes first");
    expect(said).toContain(
      "preload: short form T = K F d; nut factors after Shigley, Mechanical Engineering Design",
    );
  });
});

describe("what a function refuses", () => {
  test.each([
    [
      "preload(54 N.m)",
      "preload(54 N.m)",
      "preload takes 3 arguments, preload(torque, thread, nut_factor); 1 given",
    ],
    [
      "piston_area(38 mm, 2, 3)",
      "piston_area(38 mm, 2, 3)",
      "piston_area takes 1 to 2 arguments, piston_area(diameter, count?); 3 given",
    ],
    ["combine()", "combine()", "combine takes at least 1 argument, combine(uncertainty, …); 0 given"],
    [
      "wrench_setting(54 N.m, 10 m, 50 mm)",
      "10 m",
      "wrench_setting: wrench_length must be 50 mm to 3000 mm, not 10 m",
    ],
    [
      "swept_volume(68 mm, 75 mm, 3.5)",
      "3.5",
      "swept_volume: cylinders must be a whole number, 1 to 32, not 3.5",
    ],
    [
      "tap_drill(M10, 75)",
      "75",
      "tap_drill: percent must be 50 % to 100 %, not 75; a share is written 75 % or 0.75",
    ],
    ["overall_ratio(2.1, 0, 3.9)", "0", "overall_ratio: ratio must be 0.05 to 50, not 0"],
    ["preload(54 N.m, M10, 0.9)", "0.9", "preload: nut_factor must be 0.05 to 0.6, not 0.9"],
    [
      "cg_height(2.3 m, 686 kg, 358 kg, 371 kg, 3 m, 290 mm)",
      "3 m",
      "cg_height: rise must be at most 2300 mm, not 3 m",
    ],
    [
      'limits_of("52 Q99")',
      '"52 Q99"',
      'limits_of: "52 Q99" is not read; due is a size in mm and a tolerance class, as in "52 H7"',
    ],
    [
      "proof_load(M10, class unknown)",
      "class unknown",
      "proof_load: the class is unknown, so nothing is known of its strength",
    ],
    ["brake_split(0 N.m, 0 N.m)", "brake_split(0 N.m, 0 N.m)", "brake_split: front and rear are both zero"],
    [
      "thermal_growth(300 mm, rubber, 60 K)",
      "thermal_growth(300 mm, rubber, 60 K)",
      "thermal_growth: no figure for coefficient of expansion of rubber (differs too much from one sort to another for one figure)",
    ],
    [
      "preload(54 N.m, M10, threadlocker)",
      "threadlocker",
      "threadlocker has no nut factor of its own (wet threadlocker: the figure its maker gives); write the number",
    ],
  ])("%s", (text, operand, message) => {
    const found = fault(text);
    expect(found.code).toBe("out-of-range-argument");
    expect(text.slice(found.start, found.end)).toBe(operand);
    expect(found.message).toBe(message);
  });

  test.each([
    ["preload(54, M10, 0.2)", "54", "preload: torque is a torque (N.m), not a plain number (54)"],
    ["preload(54 mm, M10, 0.2)", "54 mm", "preload: torque is a torque (N.m), not a length (54 mm)"],
    ["preload(54 J, M10, 0.2)", "54 J", "preload: torque is a torque (N.m), not an energy (54 J)"],
    [
      "preload(54 N.m, 10 mm, 0.2)",
      "10 mm",
      "preload: thread is a thread, as in M10x1.25 or 3/8-24 UNF, not a length (10 mm)",
    ],
    [
      "proof_load(M10, 8.8)",
      "8.8",
      "proof_load: class is a strength class, as in class 8.8 or grade 5, not a plain number (8.8)",
    ],
    ["piston_area(38 mm, 2 mm)", "2 mm", "piston_area: count is a whole number, not a length (2 mm)"],
    ["limits_of(52 mm)", "52 mm", 'limits_of: class is a text, as in "52 H7", not a length (52 mm)'],
    [
      "combine(0.004 mm, 3 N)",
      "3 N",
      "combine takes quantities of one dimension: a length (0.004 mm) and a force (3 N) do not go together",
    ],
    [
      "combine(0.1 degC, 0.2 degF)",
      "0.2 degF",
      "combine takes quantities of one dimension: a temperature difference (0.1 degC) and a temperature (0.2 degF) do not go together",
    ],
    [
      "cross_weight(1 mm, 1 mm, 1 mm, 1 mm)",
      "1 mm",
      "cross_weight: front_left is a mass or a force, not a length (1 mm)",
    ],
    ["thermal_growth(300 mm, M10, 60 K)", "M10", "not the thread M10"],
  ])("%s", (text, operand, message) => {
    const found = fault(text);
    expect(found.code).toBe("wrong-dimension");
    expect(text.slice(found.start, found.end)).toBe(operand);
    expect(found.message).toContain(message);
  });

  test("a bare number is offered units of what is due", () => {
    expect(fault("preload(54, M10, 0.2)").fixes[0]).toEqual({
      start: 10,
      end: 10,
      text: " N.m",
      title: "Write 54 N.m",
      sure: false,
    });
  });

  test("a function that is not there is answered with one that is", () => {
    expect(fault("prelaod(54 N.m, M10, 0.2)")).toMatchObject({
      code: "unknown-function",
      message: "there is no function prelaod; did you mean preload?",
      fixes: [{ start: 0, end: 7, text: "preload" }],
    });
  });
});
