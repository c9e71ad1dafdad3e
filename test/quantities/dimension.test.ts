/** Dimensions in words, and which values of one can be read as another. */
import { describe, expect, test } from "vitest";
import type { DimensionName } from "../../server/quantities/dimension.ts";
import {
  compatible,
  describeDimension,
  dimensionNamed,
  dimensionOf,
  multiplyDimensions,
  ofKind,
  powerDimension,
  RATIO,
  rootDimension,
  sameExponents,
} from "../../server/quantities/dimension.ts";

const [length, mass, torque, energy] = (["length", "mass", "torque", "energy"] as const).map(
  dimensionNamed,
) as [Dim, Dim, Dim, Dim];
type Dim = ReturnType<typeof dimensionNamed>;

describe("in words", () => {
  test.each<[DimensionName, string]>([
    ["ratio", "plain number"],
    ["calendar", "time in calendar steps"],
    ["torque_or_energy", "torque or energy (force times length)"],
    ["temperature_difference", "temperature difference"],
    ["length", "length"],
    ["turn", "count of turns"],
    ["click", "count of clicks"],
    ["flat", "count of flats"],
    ["slot", "count of slots"],
    ["run", "count of runs"],
    ["link", "count of links"],
  ])("%s is %s", (name, words) => {
    expect(describeDimension(dimensionNamed(name))).toBe(words);
  });

  test("one without a name is told by its bases and their powers", () => {
    const odd = multiplyDimensions(mass, powerDimension(length, -2));
    expect(describeDimension(odd)).toBe("length^-2·mass");
    expect(describeDimension(powerDimension(mass, 3))).toBe("mass^3");
  });
});

describe("there is one object for each", () => {
  test("whatever it was made from", () => {
    expect(multiplyDimensions(length, length)).toBe(dimensionNamed("area"));
    expect(rootDimension(dimensionNamed("area"))).toBe(length);
    expect(powerDimension(length, 2)).toBe(dimensionNamed("area"));
    expect(powerDimension(length, 0)).toBe(RATIO);
    expect(dimensionOf(length.exponents, "torque")).toBe(length);
    expect(ofKind(torque, "energy")).toBe(energy);
  });

  test("a bare number changes none, not even its kind", () => {
    expect(multiplyDimensions(torque, RATIO)).toBe(torque);
    expect(multiplyDimensions(RATIO, torque)).toBe(torque);
    expect(powerDimension(torque, 1)).toBe(torque);
  });

  test("an odd power has no root", () => {
    expect(rootDimension(length)).toBeUndefined();
  });
});

describe("what can be read as what", () => {
  test("a product as a torque or an energy, never the one as the other", () => {
    const product = dimensionNamed("torque_or_energy");
    expect(compatible(product, torque)).toBe(true);
    expect(compatible(energy, product)).toBe(true);
    expect(compatible(torque, energy)).toBe(false);
    expect(compatible(length, mass)).toBe(false);
    expect(sameExponents(torque, energy)).toBe(true);
    expect(sameExponents(torque, length)).toBe(false);
  });
});
