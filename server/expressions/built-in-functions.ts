/** The functions of arithmetic that every expression has, beside those of the trade. */
import type { ExchangeRate } from "../quantities/money.ts";
import { compareMoney } from "../quantities/money.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { absolute, compare, meanOf, quantityOf } from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import { combine } from "./arithmetic.ts";
import type { BuiltInFunction } from "./built-in-function.ts";
import { noNumber, ofOne } from "./built-in-function.ts";
import { absoluteRange, mapRange } from "./interval-arithmetic.ts";
import { rootOf } from "./powers.ts";
import { plainNumber } from "./quantity-arithmetic.ts";
import type { Refusal } from "./refusal.ts";
import { isRefusal, refuse } from "./refusal.ts";
import { trigonometricFunctions } from "./trigonometric-functions.ts";
import type { Value } from "./value.ts";
import { describeValue, limitsValue, quantityValue } from "./value.ts";

const x = { name: "x", doc: "Any quantity, limits or money." } as const;
const values = {
  name: "x",
  doc: "Quantities of one dimension, limits, or money of one currency.",
  variadic: true,
} as const;
const bothEnds = "Of limits, both ends count.";
const likeTheFirst = "as the first argument";
const halfEven = "A half goes to the even neighbour (ISO 80000-1, annex B, rule A).";

export const builtInFunctions: readonly BuiltInFunction[] = [
  {
    name: "abs",
    parameters: [x],
    returns: "as the argument",
    summary: "Size without the sign.",
    formula: "|x|",
    example: "abs(9.12 mm - 9.50 mm)",
    call: ofOne(absoluteValue),
  },
  {
    name: "min",
    parameters: [values],
    returns: "one of the arguments, in its own unit",
    summary: "The least of its arguments.",
    formula: "least of x1, x2, …",
    meaning: bothEnds,
    example: "min(9.12 mm, 9.10 mm, 9.14 mm)",
    call: (given) => extreme("min", given, -1),
  },
  {
    name: "max",
    parameters: [values],
    returns: "one of the arguments, in its own unit",
    summary: "The greatest of its arguments.",
    formula: "greatest of x1, x2, …",
    meaning: bothEnds,
    example: "max(9.12 mm, 9.10 mm, 9.14 mm) - min(9.12 mm, 9.10 mm, 9.14 mm)",
    call: (given) => extreme("max", given, 1),
  },
  {
    name: "sum",
    parameters: [values],
    returns: `${likeTheFirst}, in its unit`,
    summary: "All its arguments added.",
    formula: "x1 + x2 + …",
    example: "sum(1.6 mm, 1.6 mm, 14 mm)",
    call: (given, rates) => sum(given, rates),
  },
  {
    name: "mean",
    parameters: [values],
    returns: `${likeTheFirst}, in its unit`,
    summary: "Arithmetic mean of its arguments.",
    formula: "(x1 + x2 + …) / n",
    meaning: "Of limits, their middle counts. Temperature readings have a mean, though no sum.",
    example: "mean(9.12 mm, 9.10 mm, 9.14 mm)",
    call: mean,
  },
  {
    name: "sqrt",
    parameters: [{ name: "x", doc: "Not negative; the square of a dimension, or a plain number." }],
    returns: "a quantity with half of each power",
    summary: "Square root.",
    formula: "√x",
    example: "sqrt(4 * 400 mm2 / 3.14159)",
    call: ofOne(squareRoot),
  },
  {
    name: "round",
    parameters: [
      x,
      { name: "places", doc: "Decimals to keep, 0 to 30; none when left out.", optional: true },
    ],
    returns: "as the first argument, in the unit it is written in",
    summary: "Rounded to whole numbers of its own unit, or to so many decimals of it.",
    formula: "x to the nearest 10^-places",
    meaning: `${halfEven} The unit is the author's: round(x in in, 3) rounds to thousandths of an inch.`,
    example: "round(40 lbf.ft in N.m)",
    call: round,
  },
  ...trigonometricFunctions,
];

export const builtIns: ReadonlyMap<string, BuiltInFunction> = new Map(
  builtInFunctions.map((entry) => [entry.name, entry]),
);

function absoluteValue(value: Value): Value | Refusal {
  switch (value.kind) {
    case "quantity":
      return quantityValue(absolute(value.quantity));
    case "limits":
      return asLimits(absoluteRange(value));
    case "money":
      return { kind: "money", money: { ...value.money, amount: value.money.amount.abs() } };
    default:
      return noNumber("abs", value, 0);
  }
}

function squareRoot(value: Value): Value | Refusal {
  switch (value.kind) {
    case "quantity":
      return asQuantity(rootOf(value.quantity, 2));
    case "limits": {
      const lower = rootOf(value.lower, 2);
      const upper = rootOf(value.upper, 2);
      if (isRefusal(lower)) return lower;
      return isRefusal(upper) ? upper : limitsValue({ lower, upper });
    }
    default:
      return noNumber("sqrt", value, 0);
  }
}

/** The least (`order` -1) or greatest (1) of quantities and the ends of limits, or of money. */
function extreme(name: string, given: readonly Value[], order: -1 | 1): Value | Refusal {
  const ends = given.map(endsOf);
  let best: Value | undefined;
  for (const [place, alternatives] of ends.entries()) {
    for (const candidate of alternatives) {
      if (candidate.kind !== "quantity" && candidate.kind !== "money")
        return noNumber(name, candidate, place);
      const compared = best === undefined ? order : compareValues(candidate, best);
      if (compared === undefined) return unlikeFirst(name, given, place);
      if (compared === order) best = candidate;
    }
  }
  return best ?? refuse("out-of-range-argument", `${name} takes at least 1 argument`);
}

function endsOf(value: Value): readonly Value[] {
  return value.kind === "limits" ? [quantityValue(value.lower), quantityValue(value.upper)] : [value];
}

/** -1, 0 or 1; undefined where the two have no order. */
function compareValues(a: Value, b: Value): number | undefined {
  if (a.kind === "quantity" && b.kind === "quantity") {
    const order = compare(a.quantity, b.quantity);
    return typeof order === "number" ? order : undefined;
  }
  if (a.kind !== "money" || b.kind !== "money") return undefined;
  const order = compareMoney(a.money, b.money);
  return typeof order === "number" ? order : undefined;
}

function sum(given: readonly Value[], rates: readonly ExchangeRate[]): Value | Refusal {
  let total: Value | undefined;
  for (const [place, value] of given.entries()) {
    if (value.kind !== "quantity" && value.kind !== "limits" && value.kind !== "money") {
      return noNumber("sum", value, place);
    }
    const next: Value | Refusal = total === undefined ? value : combine("+", total, value, rates);
    if (isRefusal(next)) return { ...next, operand: place };
    total = next;
  }
  return total ?? refuse("out-of-range-argument", "sum takes at least 1 argument");
}

function mean(given: readonly Value[], rates: readonly ExchangeRate[]): Value | Refusal {
  const middles = given.map(middleOf);
  const [first, ...others] = middles.flatMap((middle) => middle ?? []);
  if (first !== undefined && others.length === given.length - 1) {
    const result = meanOf([first, ...others]);
    return isFault(result) ? unlikeFirst("mean", given, unlikePlace(middles)) : quantityValue(result);
  }
  const total = sum(given, rates);
  if (isRefusal(total)) return total;
  return combine("/", total, quantityValue(quantityOf(given.length)), rates);
}

/** A quantity, or the middle of limits; undefined of all else. */
function middleOf(value: Value): Quantity | undefined {
  if (value.kind === "quantity") return value.quantity;
  if (value.kind !== "limits") return undefined;
  const middle = meanOf([value.lower, value.upper]);
  return isFault(middle) ? undefined : middle;
}

/** The first of the quantities that cannot be compared with the one at the start. */
function unlikePlace([first, ...others]: readonly (Quantity | undefined)[]): number {
  const place = others.findIndex(
    (other) => first !== undefined && other !== undefined && typeof compare(other, first) !== "number",
  );
  return place + 1;
}

const MOST_PLACES = 30;

function round([value, places]: readonly Value[]): Value | Refusal {
  const digits = places === undefined ? 0 : placesOf(places);
  if (digits === undefined) {
    return refuse(
      "out-of-range-argument",
      `round: places is a whole number from 0 to ${MOST_PLACES}, not ${places === undefined ? "" : describeValue(places)}`,
      { operand: 1 },
    );
  }
  switch (value?.kind) {
    case "quantity":
      return quantityValue(roundQuantity(value.quantity, digits));
    case "limits":
      return asLimits(mapRange(value, (end) => roundQuantity(end, digits)));
    case "money":
      return { kind: "money", money: { ...value.money, amount: value.money.amount.toDecimalPlaces(digits) } };
    default:
      return value === undefined
        ? refuse("out-of-range-argument", "round takes 1 to 2 arguments")
        : noNumber("round", value, 0);
  }
}

function placesOf(value: Value): number | undefined {
  if (value.kind !== "quantity") return undefined;
  const number = plainNumber(value.quantity);
  const isWhole = number?.isInteger() && !number.isNegative() && number.lessThanOrEqualTo(MOST_PLACES);
  return isWhole ? number?.toNumber() : undefined;
}

function roundQuantity(quantity: Quantity, places: number): Quantity {
  const { fraction: _, ...rest } = quantity;
  return { ...rest, value: quantity.value.toDecimalPlaces(places), places, exact: true };
}

function asQuantity(result: Quantity | Refusal): Value | Refusal {
  return isRefusal(result) ? result : quantityValue(result);
}

function asLimits(result: ReturnType<typeof absoluteRange>): Value | Refusal {
  return isRefusal(result) ? result : limitsValue(result);
}

function unlikeFirst(name: string, given: readonly Value[], operand: number): Refusal {
  const [first, other] = [given[0], given[operand]];
  if (first === undefined || other === undefined)
    return refuse("wrong-dimension", `${name} takes quantities`);
  if (operand === 0) return noNumber(name, first, 0);
  return refuse(
    "wrong-dimension",
    `${name} takes quantities of one dimension: ${describeValue(first)} and ${describeValue(other)} cannot be compared`,
    { operand },
  );
}
