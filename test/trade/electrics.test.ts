import { describe, expect, test } from "vitest";
import {
  nextFuse,
  readWireGauge,
  voltageDrop,
  wireArea,
  wireCurrent,
  wireFor,
} from "../../server/trade/electrics.ts";
import { wireRows } from "../../server/trade/tables/wires.ts";
import { notes, result, value } from "./answers.ts";

describe("wire gauges", () => {
  test.each([
    ["AWG 14", 14],
    ["14 AWG", 14],
    ["AWG 0", 0],
    ["AWG 00", -1],
    ["AWG 2/0", -1],
    ["AWG 4/0", -3],
    ["AWG 41", undefined],
    ["14", undefined],
  ])("%s", (text, gauge) => {
    expect(readWireGauge(text)).toBe(gauge);
  });

  test("4/0 is 0.46 in across, exactly (ASTM B258)", () => {
    expect(Math.sqrt((4 * wireArea(-3)) / Math.PI)).toBeCloseTo(0.46 * 0.0254, 12);
  });

  test("anything else is unreadable", () => {
    expect(result("wire_area", "2.5 mm2")).toMatchObject({ fault: { kind: "unreadable" } });
  });
});

describe("voltage drop", () => {
  test("doubles the one-way length; with the frame as the way back it is half", () => {
    expect(value("voltage_drop", 11, 2.5e-6, 3.2)).toBeCloseTo((2 * 3.2 * 0.017241 * 11) / 2.5, 9);
    expect(voltageDrop(11, 2.5e-6, 3.2, "frame")).toBeCloseTo(value("voltage_drop", 11, 2.5e-6, 3.2) / 2, 12);
    expect(notes("voltage_drop", 11, 2.5e-6, 3.2)).toContain("doubled");
  });

  test("copper at 70 °C resists a fifth more than at 20 °C", () => {
    const cold = value("wire_resistance", 1e-6, 10);
    expect(value("wire_resistance", 1e-6, 10, 343.15) / cold).toBeCloseTo(1.1965, 10);
  });
});

describe("fuses", () => {
  test("fuse_for is load / 0.8 and names the next standard size", () => {
    expect(value("fuse_for", 11)).toBeCloseTo(13.75, 12);
    expect(notes("fuse_for", 11)).toContain("next standard size 15 A");
    expect(notes("fuse_for", 8)).toContain("next standard size 10 A");
    expect(notes("fuse_for", 11)).toContain("inrush and stall are not judged");
  });

  test("there is none above the largest", () => {
    expect(nextFuse(100)).toBe(100);
    expect(nextFuse(101)).toBeUndefined();
    expect(notes("fuse_for", 90)).toContain("no blade fuse is that large");
  });
});

describe("choosing a wire", () => {
  test("keeps to the drop and bears the load", () => {
    // 11 A over 3.2 m one way, 3 % of 12 V
    expect(value("wire_for", 11, 3.2, 0.03, 12)).toBeCloseTo(4e-6, 12);
    expect(notes("wire_for", 11, 3.2, 0.03, 12)).toContain("the drop asks for 3.37 mm2");
  });

  test("a short run is decided by the current, not by the drop", () => {
    expect(value("wire_for", 30, 0.1, 0.05, 12)).toBeCloseTo(4e-6, 12);
  });

  test("what no listed wire does is refused", () => {
    expect(wireFor(200, 5, 0.36)).toBeUndefined();
    expect(result("wire_for", 200, 5, 0.03, 12)).toMatchObject({ fault: { kind: "not-in-table" } });
  });

  test("a wire between two listed sizes is trusted as the smaller one", () => {
    expect(wireCurrent(2.5e-6)).toBe(21);
    expect(wireCurrent(2.08e-6)).toBe(17);
    expect(wireCurrent(1e-7)).toBeUndefined();
  });

  test("the currents grow with size, and their density falls", () => {
    const densities = wireRows.map((row) => row.current / row.area);
    expect(wireRows.map((row) => row.current)).toEqual(
      wireRows.map((row) => row.current).sort((a, b) => a - b),
    );
    for (const [place, density] of densities.slice(4).entries()) {
      expect(density).toBeLessThanOrEqual((densities[place + 3] ?? 0) + 1e-9);
    }
  });
});
