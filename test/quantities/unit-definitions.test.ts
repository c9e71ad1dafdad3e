/** The table of units: which symbols there are, and what is known of each. */
import { expect, test } from "vitest";
import { dimensionNamed } from "../../server/quantities/dimension.ts";
import { everySymbol, namedUnit, plainSymbols } from "../../server/quantities/unit-definitions.ts";

test("every symbol is that of a unit, once, with its prefixes", () => {
  const symbols = everySymbol();
  expect(new Set(symbols).size).toBe(symbols.length);
  expect(symbols.filter((symbol) => namedUnit(symbol)?.symbol !== symbol)).toEqual([]);
  expect(symbols.filter((symbol) => symbol.endsWith("Pa"))).toEqual([
    "Pa",
    "µPa",
    "mPa",
    "kPa",
    "MPa",
    "GPa",
  ]);
  expect(symbols.filter((symbol) => symbol.endsWith("in"))).toEqual(["in", "min", "arcmin"]);
  expect(plainSymbols.filter((symbol) => !symbols.includes(symbol))).toEqual([]);
});

test.each([
  ["L", "l"],
  ["mL", "ml"],
  ["cL", "cl"],
  ["um", "µm"],
  ["kΩ", "kohm"],
  ["hours", "h"],
  ["°C", "°C"],
])("%s is read as %s", (written, symbol) => {
  expect(namedUnit(written)?.symbol).toBe(symbol);
});

// What a careless look at the end or the start of a word would take for litres, ohms, or a unit with a prefix.
test.each(["kL", "Lb", "Loz", "mmL", "Ωm", "kin", "klb", "cN", "m ", " m", "", "k", "mmin"])(
  "%j is no unit",
  (written) => {
    expect(namedUnit(written)).toBeUndefined();
  },
);

test("what a unit is made of is said of the unit itself, not of it with a prefix", () => {
  expect(namedUnit("Pa")?.madeOf).toBe("N/m2");
  expect(namedUnit("psi")?.madeOf).toBe("lbf/in2");
  expect(namedUnit("kPa")).not.toHaveProperty("madeOf");
  expect(namedUnit("mm")).not.toHaveProperty("madeOf");
});

test("a unit is metric and of the plain kind where its line says nothing else", () => {
  expect(namedUnit("mm")).toMatchObject({ system: "metric", dimension: dimensionNamed("length") });
  expect(namedUnit("in")?.system).toBe("imperial");
  expect(namedUnit("h")?.system).toBe("either");
  expect(namedUnit("degC")?.dimension).not.toBe(dimensionNamed("temperature"));
  expect(namedUnit("K")?.dimension).toBe(dimensionNamed("temperature"));
});

test("only a scale with a zero of its own has an offset", () => {
  const scales = plainSymbols.filter((symbol) => namedUnit(symbol)?.offset !== undefined);
  expect(scales).toEqual(["K", "degC", "degF"]);
});
