/** The order that verdicts rest on: exact in whatever units, of temperatures from absolute zero. */
import { describe, expect, test } from "vitest";
import { compareShifted } from "../../server/quantities/exact-order.ts";
import { q, rise } from "./written.ts";

describe("a value, with something on top of it, against a limit", () => {
  test.each([
    ["25.4 mm", undefined, "1 in", 0],
    ["1 in", "0.004 mm", "25.404 mm", 0],
    ["1 in", "0.0040000001 mm", "25.404 mm", 1],
    ["1 in", "-0.004 mm", "25.4 mm", -1],
    ["1 mm", "1 mm", "2 mm", 0],
    ["1 mm", "0.001 in", "1.0254 mm", 0],
  ])("%s and %s to %s", (value, shift, limit, order) => {
    expect(compareShifted(q(value), shift === undefined ? undefined : q(shift), q(limit))).toBe(order);
  });

  test.each([
    ["212 degF", undefined, "100 degC", 0],
    ["373.15 K", undefined, "100 degC", 0],
    ["100 degC", undefined, "373.15 K", 0],
    ["100 degC", "1.8 degF", "101 degC", 0],
    ["212 degF", "1 K", "101 degC", 0],
    ["100 degC", "-1 K", "99.01 degC", -1],
  ])("%s and %s to %s, as readings", (value, shift, limit, order) => {
    expect(compareShifted(q(value), shift === undefined ? undefined : rise(shift), q(limit))).toBe(order);
  });

  test("differences are counted without the zero of their scale", () => {
    expect(compareShifted(rise("10 degC"), undefined, rise("18 degF"))).toBe(0);
  });
});
