/** Powers and square roots: of which unit they are, whether they are exact, and what has none. */
import { expect, it } from "vitest";
import { power, squareRoot } from "../../server/quantities/powers.ts";
import { isFault, unlessFault } from "../../server/quantities/quantity-fault.ts";
import { ok, q, shown } from "./written.ts";

it.each([
  // As it is written, where every power is even.
  ["4 m2", "2 m"],
  ["4 in2", "2 in"],
  ["4 m2/s2", "2 m/s"],
  ["9 N.m.N.m", "3 N.m"],
  ["0 m2", "0 m"],
  // Else in what is usual for it.
  ["4 mm.m", "63.2 mm"],
  ["4", "2"],
  ["4 %", "0.2"],
  ["-4 m2", "a negative value has no square root"],
  ["2 m", "length (m) has no square root: it is not the square of a dimension"],
])("the square root of %s is %s", (text, root) => {
  expect(shown(squareRoot(q(text)))).toBe(root);
});

it.each([
  ["3 mm", 2, "9 mm2"],
  ["3 mm", 0, "1"],
  ["3 mm", -1, "0.333 1/mm"],
  ["4 m2", 0.5, "2 m"],
  ["3 mm", 1.5, "a quantity with a unit takes a whole power of at most 12, not 1.5"],
  ["1 mm", 13, "a quantity with a unit takes a whole power of at most 12, not 13"],
  ["1 mm", 12, "1 mm^12"],
  ["2", 10, "1024"],
  ["50 %", 2, "0.25"],
  ["0", -1, "division by zero"],
  ["-8", 0.333, "a negative number has no such power"],
  ["1", 1000, "1"],
  ["1", 1001, "a power beyond 1000 is out of reach"],
])("%s to the power of %s is %s", (text, exponent, result) => {
  expect(shown(power(q(text), exponent))).toBe(result);
});

it("is exact as long as nothing is rounded", () => {
  expect(ok(squareRoot(q("4 m2"))).exact).toBe(true);
  expect(ok(squareRoot(q("2"))).exact).toBe(false);
  expect(ok(power(q("2"), 10)).exact).toBe(true);
  expect(ok(power(q("2"), -2)).exact).toBe(false);
  expect(ok(power(q("2"), 0.25)).exact).toBe(false);
  expect(ok(power(q("1.234567890123456789"), 3)).exact).toBe(false);
});

it("a result is what it is unless it is a fault, and nothing of nothing", () => {
  const length = q("4 mm");
  const fault = squareRoot(length);
  expect(isFault(fault)).toBe(true);
  expect(unlessFault(fault)).toBeUndefined();
  expect(unlessFault(length)).toBe(length);
  expect(unlessFault(undefined)).toBeUndefined();
  expect(unlessFault(0)).toBe(0);
  expect(isFault(1)).toBe(false);
});
