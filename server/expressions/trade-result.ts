/** From what a function of the trade gives to a value in the author's units. */
import { compatible, RATIO } from "../quantities/dimension.ts";
import type { Quantity } from "../quantities/quantity.ts";
import type { Unit } from "../quantities/unit.ts";
import { NO_UNIT, unit } from "../quantities/unit.ts";
import type { Returns } from "../trade/function.ts";
import type { Computed } from "../trade/result.ts";
import { quantityFromSi, siOf } from "./si.ts";
import type { Argument } from "./trade-argument.ts";
import type { Value } from "./value.ts";
import { limitsValue, quantityValue } from "./value.ts";

/**
 * The result with as many figures as the least precise argument. Its unit: the one
 * that the function itself chose (inches of an inch thread), else the author's own where an argument has the
 * dimension of the result, else the imperial one where all arguments are imperial, else the customary one.
 */
export function resultFrom(returns: Returns, result: Computed, given: readonly Argument[]): Value {
  const quantities = given.flatMap(({ quantity }) => quantity ?? []);
  const to = unitOfResult(returns, result.unit, quantities);
  const figures = fewestFigures(given);
  const size = largestOf(quantities, to);
  const { value } = result;
  if (typeof value === "number") return quantityValue(quantityFromSi(value, to, figures, size));
  const span = Math.max(size, Math.abs(value.lower), Math.abs(value.upper));
  return limitsValue({
    lower: inMicrometres(quantityFromSi(value.lower, to, figures, span)),
    upper: inMicrometres(quantityFromSi(value.upper, to, figures, span)),
  });
}

function unitOfResult(returns: Returns, chosen: string | undefined, quantities: readonly Quantity[]): Unit {
  if (chosen !== undefined) return unit(chosen);
  const [first] = quantities;
  switch (returns.is) {
    case "number":
      return returns.unit === undefined ? NO_UNIT : unit(returns.unit);
    case "same quantity":
      return first === undefined ? NO_UNIT : asDifferenceUnit(first.unit);
    case "quantity":
    case "limits":
      return authorsUnit(unit(returns.unit), quantities);
  }
}

function authorsUnit(customary: Unit, quantities: readonly Quantity[]): Unit {
  const like = quantities.find(({ unit }) => compatible(unit.dimension, customary.dimension));
  if (like !== undefined && keepsItsUnit(like.unit, customary)) return like.unit;
  const imperial = IMPERIAL.get(customary.symbol);
  return imperial !== undefined && isImperial(quantities) ? unit(imperial) : customary;
}

/** Of a length mm or in, of an angle deg; of all else the author's own unless it is the customary one by powers of ten. */
function keepsItsUnit(own: Unit, customary: Unit): boolean {
  const name = customary.dimension.name;
  if (name === "length" || name === "angle" || name === "temperature") return false;
  return own.system === "imperial" || !differsByPowersOfTen(own, customary);
}

function differsByPowersOfTen(a: Unit, b: Unit): boolean {
  const ratio = a.factor.numerator * b.factor.denominator;
  const below = a.factor.denominator * b.factor.numerator;
  return withoutNoughts(ratio) === withoutNoughts(below);
}

/** No factor is nought. */
function withoutNoughts(factor: bigint): bigint {
  return factor % 10n === 0n ? withoutNoughts(factor / 10n) : factor;
}

/** Imperial where an argument is and none is metric. */
function isImperial(quantities: readonly Quantity[]): boolean {
  const systems = quantities.map(({ unit }) => unit.system);
  return systems.includes("imperial") && !systems.includes("metric");
}

/** What an imperial workshop prints for each customary unit of a result. */
const IMPERIAL: ReadonlyMap<string, string> = new Map([
  ["mm", "in"],
  ["mm2", "in2"],
  ["cc", "in3"],
  ["N", "lbf"],
  ["kN", "lbf"],
  ["N.m", "lbf.ft"],
  ["bar", "psi"],
  ["MPa", "psi"],
  ["N/mm", "lbf/in"],
  ["km/h", "mph"],
  ["m/s", "ft/min"],
  ["degC", "degF"],
  ["kW", "hp"],
]);

/** A difference of temperatures is printed in K, or in degF. */
function asDifferenceUnit(own: Unit): Unit {
  return own.offset !== undefined && own.system !== "imperial" ? unit("K") : own;
}

/** The fewest significant figures among them; undefined where all are exact. */
function fewestFigures(given: readonly Argument[]): number | undefined {
  const known = given.flatMap(({ figures }) => figures ?? []);
  return known.length === 0 ? undefined : Math.min(...known);
}

/** The largest of the arguments that have the dimension of the result, in SI units. */
function largestOf(quantities: readonly Quantity[], to: Unit): number {
  if (to.dimension === RATIO) return 0;
  const sizes = quantities
    .filter(({ dimension }) => compatible(dimension, to.dimension))
    .map((quantity) => Math.abs(siOf(quantity)));
  return Math.max(0, ...sizes);
}

/** Limits in mm are told to the micrometre, as ISO 286 tables are. */
const FINEST_OF_LIMITS = 3;

function inMicrometres(end: Quantity): Quantity {
  return end.exact && end.unit.symbol === "mm" ? { ...end, places: FINEST_OF_LIMITS } : end;
}
