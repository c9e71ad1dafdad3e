import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { computed, notes, result, value } from "./answers.ts";

describe("springs", () => {
  const rate = fc.double({ min: 100, max: 1e6, noNaN: true });

  test("two like springs are half as stiff in series and twice in parallel", () => {
    fc.assert(
      fc.property(
        rate,
        (k) =>
          Math.abs(value("spring_series", k, k) / (k / 2) - 1) < 1e-12 &&
          Math.abs(value("spring_parallel", k, k) / (2 * k) - 1) < 1e-12,
      ),
    );
  });

  test("half the active coils are twice as stiff", () => {
    const whole = value("spring_rate", 0.012, 0.11, 8, 79e9);
    expect(value("spring_rate", 0.012, 0.11, 4, 79e9)).toBeCloseTo(2 * whole, 6);
  });

  test("wheel_rate takes spring travel over wheel travel, squared, and says so", () => {
    expect(value("wheel_rate", 30_000, 0.5)).toBe(7500);
    expect(notes("wheel_rate", 30_000, 0.5)).toBe("motion ratio is spring travel over wheel travel");
  });

  test("ride_frequency of 20 N/mm and 250 kg is 1.42 Hz", () => {
    expect(value("ride_frequency", 20_000, 250)).toBeCloseTo(Math.sqrt(80) / (2 * Math.PI), 12);
  });

  test("a coil tighter than twice its wire is refused", () => {
    expect(result("spring_rate", 0.012, 0.02, 8, 79e9)).toMatchObject({
      fault: { kind: "out-of-range", parameter: "mean_diameter", min: 0.024 },
    });
  });
});

describe("shafts", () => {
  test("a tube is stressed more than the bar it was bored from", () => {
    const bar = value("torsion_stress", 300, 0.03, 0);
    expect(value("torsion_stress", 300, 0.03, 0.02)).toBeGreaterThan(bar);
  });

  test("twist keeps the sign of the torque", () => {
    expect(value("twist", -100, 0.5, 0.02, 0, 79e9)).toBeCloseTo(
      -value("twist", 100, 0.5, 0.02, 0, 79e9),
      15,
    );
  });

  test("a bore as large as the tube is refused", () => {
    expect(result("torsion_stress", 300, 0.03, 0.03)).toMatchObject({
      fault: { kind: "out-of-range", parameter: "inner", max: 0.03 },
    });
  });
});

describe("measurement", () => {
  test("expanded is resolution / √3, k = 2 and rectangular, as it says", () => {
    expect(value("expanded", 1e-5)).toBeCloseTo(1e-5 / Math.sqrt(3), 18);
    expect(notes("expanded", 1e-5)).toBe("k = 2, rectangular");
  });

  test("combine is at least the largest and at most the sum", () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(part, part, part, (a, b, c) => {
        const all = value("combine", a, b, c);
        return all >= Math.max(a, b, c) - 1e-12 && all <= a + b + c + 1e-12;
      }),
    );
  });

  test("total_runout takes the larger reading first", () => {
    expect(value("total_runout", 0.00005, -0.00003)).toBeCloseTo(0.00008, 15);
    expect(result("total_runout", -0.00003, 0.00005)).toMatchObject({ fault: { parameter: "max" } });
  });
});

describe("engine and cooling", () => {
  test("clearance_volume undoes compression_ratio", () => {
    fc.assert(
      fc.property(fc.double({ min: 1.5, max: 40, noNaN: true }), (ratio) => {
        const clearance = value("clearance_volume", 3e-4, ratio);
        return Math.abs(value("compression_ratio", 3e-4, clearance) / ratio - 1) < 1e-12;
      }),
    );
  });

  test("ring_gap_range shows its factor and defers to the maker", () => {
    expect(computed("ring_gap_range", 0.08).value).toEqual({ lower: 0.00024, upper: 0.00032 });
    expect(notes("ring_gap_range", 0.08)).toContain("0.003 to 0.004 of the bore");
    expect(notes("ring_gap_range", 0.08)).toContain("maker's figure comes first");
  });

  test("water freezes at 0 °C; more glycol freezes lower, up to the end of the table", () => {
    expect(value("freeze_point", 0)).toBe(273.15);
    const share = fc.double({ min: 0, max: 0.59, noNaN: true });
    fc.assert(fc.property(share, (each) => value("freeze_point", each + 0.01) < value("freeze_point", each)));
    expect(notes("freeze_point", 0.5)).toContain("ethylene glycol by volume");
  });

  test("propylene glycol ends at half and half", () => {
    expect(result("freeze_point", 0.55, "propylene")).toMatchObject({
      fault: { kind: "out-of-range", max: 0.5 },
    });
    expect(result("freeze_point", 0.5, "methanol")).toMatchObject({ fault: { kind: "unreadable" } });
    expect(result("freeze_point", 0.5, "constructor")).toMatchObject({ fault: { kind: "unreadable" } });
  });

  test("power is torque times angular speed: 100 N.m at 6000 rpm is 62.8 kW", () => {
    expect(value("power", 100, 100)).toBeCloseTo(62_831.853, 3);
  });
});

test("a coolant that has no table is told with those that have", () => {
  expect(result("freeze_point", 0.3, "methanol")).toEqual({
    fault: { kind: "unreadable", text: "methanol", expected: '"ethylene" or "propylene"' },
  });
});
