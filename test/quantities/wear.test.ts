import { describe, expect, test } from "vitest";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { decimal } from "../../server/quantities/decimal.ts";
import type { Limits } from "../../server/quantities/limits.ts";
import type { Quantity } from "../../server/quantities/quantity.ts";
import type { WearReading } from "../../server/quantities/wear.ts";
import { EarlierReadings, wear as wearBetween } from "../../server/quantities/wear.ts";
import { q, shown } from "./written.ts";

const THICKNESS: Limits = { lower: q("8.4 mm") };

/** `2026-01-01 0 h 9.50 mm`, one reading a line. */
function readings(...lines: string[]): WearReading[] {
  return lines.map((line) => {
    const [date = "", hours = "", , ...value] = line.split(" ");
    return { date: date as IsoDate, runningHours: decimal(hours), value: q(value.join(" ")) };
  });
}

function wear(all: readonly WearReading[], limits: Limits, uncertainty: Quantity | undefined) {
  const last = all.at(-1);
  return last && wearBetween(new EarlierReadings(all.slice(0, -1)), last, limits, uncertainty);
}

function printed(quantity: Parameters<typeof shown>[0] | undefined): string | undefined {
  return quantity === undefined ? undefined : shown(quantity);
}

describe("wear", () => {
  test("over running hours where any were recorded between the readings", () => {
    const found = wear(
      readings("2026-01-01 0 h 9.50 mm", "2026-03-01 10 h 9.00 mm", "2026-06-01 20 h 8.50 mm"),
      THICKNESS,
      q("0.01 mm"),
    );
    expect(found?.over).toBe("h");
    expect(printed(found?.rate)).toBe("-0.0500 mm/h");
    expect(printed(found?.remaining)).toBe("2.00 h");
    expect(found?.side).toBe("lower");
  });

  test("else over days", () => {
    const found = wear(readings("2026-01-01 5 h 9.0 mm", "2026-01-11 5 h 8.6 mm"), THICKNESS, undefined);
    expect(found?.over).toBe("d");
    expect(printed(found?.rate)).toBe("-0.0400 mm/d");
    expect(printed(found?.remaining)).toBe("5.00 d");
  });

  // Least squares through (0, 1), (10, 3), (20, 2), (30, 5): slope 0.11, intercept 1.1, worked by hand.
  test("the line is that of least squares", () => {
    const found = wear(
      readings("2026-01-01 0 h 1 mm", "2026-01-02 10 h 3 mm", "2026-01-03 20 h 2 mm", "2026-01-04 30 h 5 mm"),
      { upper: q("5.5 mm") },
      undefined,
    );
    expect(found?.rate.value.toString()).toBe("0.11");
    expect(found?.remaining.value.toString()).toBe("10");
  });

  test("readings in different units are one characteristic", () => {
    const found = wear(
      readings("2026-01-01 0 h 1 in", "2026-01-02 10 h 25.3 mm"),
      { lower: q("25.25 mm") },
      undefined,
    );
    expect(printed(found?.remaining)).toBe("5.00 h");
  });

  test("no figure unless it heads for the limit", () => {
    expect(
      wear(readings("2026-01-01 0 h 9.0 mm", "2026-02-01 9 h 9.2 mm"), THICKNESS, undefined),
    ).toBeUndefined();
    expect(
      wear(readings("2026-01-01 0 h 9.0 mm", "2026-02-01 9 h 9.0 mm"), THICKNESS, undefined),
    ).toBeUndefined();
    expect(
      wear(readings("2026-01-01 0 h 8.6 mm", "2026-02-01 9 h 8.3 mm"), THICKNESS, undefined),
    ).toBeUndefined();
  });

  test("no figure unless it moved more than the root of two times U", () => {
    const moved = readings("2026-01-01 0 h 9.000 mm", "2026-02-01 9 h 8.900 mm");
    const near: Limits = { lower: q("8.85 mm") };
    expect(wear(moved, near, q("0.0708 mm"))).toBeUndefined();
    expect(wear(moved, near, q("0.0707 mm"))).toBeDefined();
  });

  test("the line is never drawn further than one span ahead", () => {
    const far = wear(readings("2026-01-01 0 h 9.4 mm", "2026-02-01 10 h 8.91 mm"), THICKNESS, undefined);
    expect(far).toBeUndefined();
    const oneSpan = wear(readings("2026-01-01 0 h 9.4 mm", "2026-02-01 10 h 8.9 mm"), THICKNESS, undefined);
    expect(printed(oneSpan?.remaining)).toBe("10.0 h");
  });

  // Through (0, 1), (1, 2), (3, 2): slope 2/7, intercept 9/7, neither of which ends; 3 is reached at 6, one span further.
  test("nothing is rounded on the way to where the limit is reached", () => {
    const found = wear(
      readings("2026-01-01 0 h 1 mm", "2026-01-02 1 h 2 mm", "2026-01-03 3 h 2 mm"),
      { upper: q("3 mm") },
      undefined,
    );
    expect(found?.remaining.value.toString()).toBe("3");
  });

  test("what earlier readings sum up to serves each last one", () => {
    const all = readings("2026-01-01 0 h 9.50 mm", "2026-02-01 10 h 9.00 mm", "2026-03-01 10 h 8.9 mm");
    const earlier = new EarlierReadings(all.slice(0, 2));
    for (const line of ["2026-04-01 20 h 8.50 mm", "2026-04-01 0 h 8.60 mm", "2026-04-01 30 h 8.40 mm"]) {
      const [last] = readings(line) as [WearReading];
      expect(wearBetween(earlier, last, THICKNESS, undefined)).toEqual(
        wear([...all.slice(0, 2), last], THICKNESS, undefined),
      );
    }
  });

  test("one reading, or all on one day, tell nothing", () => {
    expect(wear(readings("2026-01-01 0 h 9.5 mm"), THICKNESS, undefined)).toBeUndefined();
    expect(
      wear(readings("2026-01-01 0 h 9.5 mm", "2026-01-01 0 h 9.4 mm"), THICKNESS, undefined),
    ).toBeUndefined();
  });

  test("from the first reading to the last, whatever stands between", () => {
    const found = wear(
      readings("2026-01-01 0 h 9.0 mm", "2026-01-11 0 h 9.0 mm", "2026-01-21 8 h 8.6 mm"),
      THICKNESS,
      undefined,
    );
    expect(found?.over).toBe("h");
    expect(printed(found?.span)).toBe("8 h");
  });

  test("a temperature rises per hour too", () => {
    const found = wear(
      readings("2026-01-01 0 h 80 degC", "2026-02-01 10 h 85 degC"),
      { upper: q("90 degC") },
      undefined,
    );
    expect(printed(found?.rate)).toBe("0.500 degC/h");
    expect(printed(found?.remaining)).toBe("10.0 h");
  });
});

describe("no wear is told", () => {
  test.each([
    ["of one reading", ["2026-01-01 0 h 9.50 mm"]],
    ["of readings at one time", ["2026-01-01 0 h 9.50 mm", "2026-01-01 0 h 9.00 mm"]],
    ["of what is beyond its limit already", ["2026-01-01 0 h 9.00 mm", "2026-02-01 10 h 8.20 mm"]],
    ["of readings that cannot be compared", ["2026-01-01 0 h 9.00 mm", "2026-02-01 10 h 8.00 N"]],
    [
      "where one between cannot be compared",
      ["2026-01-01 0 h 9.00 mm", "2026-02-01 10 h 8.90 N", "2026-03-01 20 h 8.80 mm"],
    ],
    // Slope: the sum of (x - 15) (y - 1.5) is -15 · -0.5 - 5 · 1.5 + 5 · -1.5 + 15 · 0.5 = 0, worked by hand.
    [
      "of readings whose line is level though the last is above the first",
      ["2026-01-01 0 h 1 mm", "2026-01-02 10 h 3 mm", "2026-01-03 20 h 0 mm", "2026-01-04 30 h 2 mm"],
    ],
    ["of nothing", []],
  ])("%s", (_, lines) => {
    expect(wear(readings(...lines), { ...THICKNESS, upper: q("9.6 mm") }, undefined)).toBeUndefined();
  });

  test("of what moves away from its only limit", () => {
    const growing = readings("2026-01-01 0 h 8.50 mm", "2026-02-01 10 h 9.00 mm");
    expect(wear(growing, THICKNESS, undefined)).toBeUndefined();
  });

  test("against a limit of another dimension", () => {
    const worn = readings("2026-01-01 0 h 9.00 mm", "2026-02-01 10 h 8.90 mm");
    expect(wear(worn, { lower: q("8.4 N") }, undefined)).toBeUndefined();
  });
});
