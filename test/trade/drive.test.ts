import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readTyre } from "../../server/trade/tyres.ts";
import { computed, notes, result, value } from "./answers.ts";

const rpm = 1 / 60;

describe("speeds", () => {
  test("60 rpm, direct drive, two metres round, is 2 m/s", () => {
    expect(value("road_speed", 60 * rpm, 1, 2)).toBeCloseTo(2, 12);
  });

  test("engine_speed_at undoes road_speed", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 300, noNaN: true }),
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (speed, ratio, circumference) => {
          const road = value("road_speed", speed, ratio, circumference);
          if (road > 150) return true;
          return Math.abs(value("engine_speed_at", road, ratio, circumference) / speed - 1) < 1e-12;
        },
      ),
    );
  });

  test("ratios multiply", () => {
    expect(value("overall_ratio", 2, 3.5, 0.8)).toBeCloseTo(5.6, 12);
  });

  test("the mean piston speed is two strokes a turn: 75 mm at 6000 rpm is 15 m/s", () => {
    expect(value("piston_speed", 0.075, 6000 * rpm)).toBeCloseTo(15, 12);
  });
});

describe("chains", () => {
  const pitch = fc.constantFrom(0.0127, 0.015875, 0.01905);
  const teeth = fc.integer({ min: 11, max: 60 });

  test("chain_centres undoes chain_length", () => {
    fc.assert(
      fc.property(
        pitch,
        teeth,
        teeth,
        fc.double({ min: 20, max: 80, noNaN: true }),
        (p, z1, z2, inPitches) => {
          const centres = inPitches * p;
          const links = value("chain_length", p, z1, z2, centres);
          return Math.abs(value("chain_centres", p, z1, z2, links) / centres - 1) < 1e-9;
        },
      ),
    );
  });

  test("the links to use are the next even number", () => {
    expect(notes("chain_length", 0.01905, 17, 34, 0.762)).toContain("use 106 links");
    expect(notes("chain_length", 0.0127, 20, 20, 0.508)).toContain("use 100 links");
    // By hand: 2 × 559/12.7 + 29.5 + (25/2π)² × 12.7/559 = 88.031 + 29.5 + 0.360.
    expect(notes("chain_length", 0.0127, 17, 42, 0.559)).toContain("117.89 pitches: use 118 links");
  });

  test("sprockets that do not clear each other and a chain too short are refused", () => {
    expect(result("chain_length", 0.0127, 17, 45, 0.05)).toMatchObject({
      fault: { kind: "out-of-range", parameter: "centres" },
    });
    expect(result("chain_centres", 0.0127, 17, 45, 40)).toMatchObject({
      fault: { kind: "out-of-range", parameter: "links" },
    });
  });
});

describe("tyres", () => {
  test.each([
    ["185/70R13", 0.185, 0.7, 13],
    ["185/70 R 13", 0.185, 0.7, 13],
    ["185/70HR13", 0.185, 0.7, 13],
    ["P185/70R13 86T", 0.185, 0.7, 13],
    ["90/90-18", 0.09, 0.9, 18],
    ["155R13", 0.155, undefined, 13],
  ])("%s", (text, width, aspect, rim) => {
    const tyre = readTyre(text);
    expect(tyre?.width).toBeCloseTo(width, 9);
    expect(tyre?.aspect).toBe(aspect);
    expect(tyre?.rim).toBeCloseTo(rim * 0.0254, 9);
  });

  test("without a ratio it is of series 80, and 82 is named", () => {
    expect(value("tyre_diameter", "155R13")).toBeCloseTo(0.5782, 9);
    expect(computed("tyre_diameter", "155R13").notes?.[0]).toContain("584 mm");
  });

  test("an inch cross-ply name is not read", () => {
    expect(result("tyre_diameter", "5.20-13")).toMatchObject({ fault: { kind: "unreadable" } });
  });
});
