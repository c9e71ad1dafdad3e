import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { computed, notes, result, value } from "./answers.ts";

const degree = Math.PI / 180;

describe("toe", () => {
  test("toe_distance undoes toe_angle, inwards and outwards", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        (toe, rim) => Math.abs(value("toe_distance", value("toe_angle", toe, rim), rim) - toe) < 1e-15,
      ),
    );
  });

  test("positive is inwards both ways", () => {
    expect(value("toe_angle", 0.002, 0.35)).toBeGreaterThan(0);
    expect(value("toe_angle", -0.002, 0.35)).toBeLessThan(0);
  });

  test("more toe than rim is refused", () => {
    expect(result("toe_angle", 0.1, 0.06)).toMatchObject({
      fault: { kind: "out-of-range", parameter: "toe" },
    });
  });
});

test("what is refused is told with the unit that the range is in", () => {
  expect(result("toe_angle", 0.6, 0.4)).toEqual({
    fault: { kind: "out-of-range", parameter: "toe", value: 0.6, min: -0.2, max: 0.2, unit: "mm" },
  });
});

test("camber is negative with the top inwards", () => {
  expect(value("camber_from_gauge", -0.005, 0.33)).toBeLessThan(0);
});

describe("castor from a swing", () => {
  test("is positive when camber turns positive with the wheel outwards: top rearwards", () => {
    expect(value("castor_from_swing", 2 * degree, -1 * degree, 20 * degree)).toBeGreaterThan(0);
    expect(value("caster_from_swing", -1 * degree, 2 * degree, 20 * degree)).toBeLessThan(0);
  });

  test("shows the sine factor and the rule of thumb beside it", () => {
    const said = notes("castor_from_swing", 2 * degree, -1 * degree, 20 * degree);
    // 1/(2 sin 20°) and 180/(40 π)
    expect(said).toContain("1.4619");
    expect(said).toContain("1.4324");
    expect(said).toContain("1.5 at 20 deg");
  });
});

describe("Ackermann", () => {
  test("both wheels roll about one point: cot outer − cot inner = track / wheelbase", () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 100, noNaN: true }), (radius) => {
        const { value: angles } = computed("ackermann", 2.4, 1.3, radius);
        if (typeof angles === "number") return false;
        const difference = 1 / Math.tan(angles.lower) - 1 / Math.tan(angles.upper);
        return Math.abs(difference - 1.3 / 2.4) < 1e-9;
      }),
    );
  });

  test("a turn about a point under the car is refused", () => {
    expect(result("ackermann", 2.4, 1.3, 0.6)).toMatchObject({ fault: { parameter: "radius", min: 0.65 } });
  });
});

describe("corner weights", () => {
  const corners = [310, 295, 260, 275] as const;

  test("cross_weight is right front plus left rear over the total, and says so", () => {
    expect(value("cross_weight", ...corners)).toBeCloseTo((295 + 260) / 1140, 12);
    expect(notes("cross_weight", ...corners)).toBe("diagonal: right front + left rear");
  });

  test("side_share is the left, axle_share the front", () => {
    expect(value("side_share", 300, 100, 300, 100)).toBe(0.75);
    expect(value("axle_share", 300, 300, 100, 100)).toBe(0.75);
  });

  test("nothing on the pads is refused", () => {
    expect(result("cross_weight", 0, 0, 0, 0)).toMatchObject({ fault: { kind: "impossible" } });
  });
});

describe("height of the centre of gravity", () => {
  test("comes out of the load that moves forwards when the rear is raised", () => {
    // A car of 1000 kg, 2.5 m wheelbase, centre of gravity 0.5 m high and 1.2 m behind the front axle, wheels 0.3 m:
    // raised by θ, the centre moves forward, over the axle, by (h − r) sin θ along the level.
    const [wheelbase, behind, height, radius, rise] = [2.5, 1.2, 0.5, 0.3, 0.6];
    const slope = Math.asin(rise / wheelbase);
    const level = 1000 * (1 - behind / wheelbase);
    const forward = behind * Math.cos(slope) - (height - radius) * Math.sin(slope);
    const raised = 1000 * (1 - forward / (wheelbase * Math.cos(slope)));
    expect(value("cg_height", wheelbase, 1000, level, raised, rise, radius)).toBeCloseTo(height, 9);
  });

  test("no axle weighs as much as the whole, level or raised", () => {
    for (const [level, raised] of [
      [6000, 5000],
      [5000, 6000],
    ] as const)
      expect(result("cg_height", 2.5, 6000, level, raised, 0.3, 0.3)).toEqual({
        fault: { kind: "impossible", reason: "an axle cannot weigh as much as the whole vehicle" },
      });
  });

  test("warns of the raised car", () => {
    expect(notes("cg_height", 2.5, 1000, 520, 545, 0.6, 0.3)).toContain("nobody under it");
  });

  test("refuses loads that would put the centre of gravity below the ground", () => {
    expect(result("cg_height", 2.5, 1000, 520, 480, 0.3, 0.3)).toEqual({
      fault: { kind: "impossible", reason: expect.stringContaining("weighs more once the rear is raised") },
    });
    expect(value("cg_height", 2.5, 1000, 520, 518, 0.3, 0.3)).toBeLessThan(0.3);
  });
});
