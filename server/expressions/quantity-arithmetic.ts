import type { Decimal } from "../quantities/decimal.ts";
import { RATIO } from "../quantities/dimension.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { add, convert, divide, formatQuantity, multiply, subtract } from "../quantities/quantity.ts";
import type { QuantityFault } from "../quantities/quantity-fault.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import type { Unit } from "../quantities/unit.ts";
import { adviseUnit, NO_UNIT } from "../quantities/unit.ts";
import { raise } from "./powers.ts";
import type { Refusal } from "./refusal.ts";
import { refuse } from "./refusal.ts";
import { describeQuantity, dimensionWithArticle } from "./value.ts";

export type Operator = "+" | "-" | "*" | "/" | "^";

/** Two quantities by one of the operators; a refusal names both with their dimensions and units. */
export function combineQuantities(operator: Operator, a: Quantity, b: Quantity): Quantity | Refusal {
  if (operator === "^") return raise(a, b);
  const result = OPERATIONS[operator](a, b);
  return isFault(result) ? inWords(operator, a, b, result) : withinReach(result);
}

/** A quantity in another unit of its dimension. */
export function convertQuantity(a: Quantity, to: Unit): Quantity | Refusal {
  const result = convert(a, to);
  if (!isFault(result)) return withinReach(result);
  if (result.fault === "calendar") return refuse("wrong-dimension", result.message);
  return refuse(
    "wrong-dimension",
    `cannot convert ${describeQuantity(a)} to ${to.symbol}, ${dimensionWithArticle(to.dimension)}`,
  );
}

/** The value of a bare number or a percentage; undefined of anything with a dimension. */
export function plainNumber(quantity: Quantity): Decimal | undefined {
  if (quantity.dimension !== RATIO) return undefined;
  const plain = convert(quantity, NO_UNIT);
  return isFault(plain) ? undefined : plain.value;
}

/** A result that is large or small beyond all use is refused, so that every value is finite also as a binary float. */
function withinReach(result: Quantity): Quantity | Refusal {
  return isWithinReach(result.value) ? result : beyondReach;
}

const LARGEST_EXPONENT = 300;

export function isWithinReach(value: Decimal): boolean {
  return value.isFinite() && (value.isZero() || Math.abs(value.e) <= LARGEST_EXPONENT);
}

export const beyondReach: Refusal = refuse(
  "out-of-range-argument",
  `the result is beyond 1e${LARGEST_EXPONENT}, or nearer to nought than 1e-${LARGEST_EXPONENT}`,
);

const OPERATIONS = { "+": add, "-": subtract, "*": multiply, "/": divide } as const;

function inWords(operator: Operator, a: Quantity, b: Quantity, fault: QuantityFault): Refusal {
  switch (fault.fault) {
    case "dimension":
      return refuse("wrong-dimension", unlike(operator, a, b), {
        operand: 1,
        units: unitsFor(a, b.unit),
      });
    case "temperature-readings":
      return refuse("wrong-dimension", operator === "+" ? twoReadings(a, b) : fault.message, {
        operand: a.dimension.kind === "point" && operator !== "+" ? 0 : 1,
      });
    case "calendar":
      return refuse("wrong-dimension", fault.message, { operand: 1 });
    case "division-by-zero":
      return refuse("out-of-range-argument", `cannot divide ${describeQuantity(a)} by zero`, { operand: 1 });
    case "magnitude":
      return beyondReach;
    case "power":
      return refuse("out-of-range-argument", fault.message);
  }
}

function unlike(operator: Operator, a: Quantity, b: Quantity): string {
  return operator === "-"
    ? `cannot subtract ${describeQuantity(b)} from ${describeQuantity(a)}`
    : `cannot add ${describeQuantity(a)} and ${describeQuantity(b)}`;
}

function twoReadings(a: Quantity, b: Quantity): string {
  return `cannot add two temperature readings (${formatQuantity(a)} and ${formatQuantity(b)}); a difference is written in K`;
}

/** A bare number lacks the unit of what it is added to; a mass stands where a force is meant. */
function unitsFor(a: Quantity, found: Unit): readonly string[] {
  if (found === NO_UNIT) return [a.unit.symbol];
  const { name } = a.dimension;
  if (name === undefined || name === "ratio") return [];
  const { nearest, sure } = adviseUnit(found, name);
  return sure ? nearest : [];
}
