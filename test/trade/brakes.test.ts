import { describe, expect, test } from "vitest";
import { notes, result, value } from "./answers.ts";

describe("brakes", () => {
  test("piston_area is of one side: one piston unless more are said", () => {
    expect(value("piston_area", 0.054)).toBeCloseTo((Math.PI / 4) * 0.054 ** 2, 15);
    expect(value("piston_area", 0.0381, 2)).toBeCloseTo(2 * value("piston_area", 0.0381), 15);
  });

  test("clamp_force is the force of one pad, brake_torque counts both faces", () => {
    const force = value("clamp_force", 5e6, 0.002);
    expect(force).toBe(10_000);
    expect(value("brake_torque", force, 0.35, 0.105)).toBeCloseTo(2 * 0.35 * 10_000 * 0.105, 9);
    expect(notes("brake_torque", force, 0.35, 0.105)).toBe("both faces counted");
  });

  test("line_pressure takes the share of the pedal force that reaches the cylinder, all of it when none is said", () => {
    const whole = value("line_pressure", 400, 5, 0.01905);
    expect(value("line_pressure", 400, 5, 0.01905, 0.6)).toBeCloseTo(0.6 * whole, 6);
  });

  test("bar_share belongs to the cylinder the offset points to; the other way round gives the rest", () => {
    expect(value("bar_share", 0, 0.06)).toBe(0.5);
    expect(value("bar_share", 0.006, 0.06)).toBeCloseTo(0.6, 12);
    expect(value("bar_share", -0.006, 0.06)).toBeCloseTo(0.4, 12);
  });

  test("a pivot beyond the clevis is refused", () => {
    expect(result("bar_share", 0.04, 0.06)).toEqual({
      fault: { kind: "out-of-range", parameter: "offset", value: 0.04, min: -0.03, max: 0.03, unit: "mm" },
    });
  });

  test("brake_split is the front's share, and needs some braking", () => {
    expect(value("brake_split", 300, 100)).toBe(0.75);
    expect(result("brake_split", 0, 0)).toMatchObject({ fault: { kind: "impossible" } });
  });

  test("pedal_travel grows with the pistons and falls with the square of the bore", () => {
    const travel = value("pedal_travel", 5, 0.02, 0.008, 0.0002);
    expect(value("pedal_travel", 5, 0.02, 0.016, 0.0002)).toBeCloseTo(2 * travel, 12);
    expect(value("pedal_travel", 5, 0.04, 0.008, 0.0002)).toBeCloseTo(travel / 4, 12);
  });
});
