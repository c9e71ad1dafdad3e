/**
 * Arithmetic of limits: the least and the greatest that can come of any values within them (R. E. Moore, Interval
 * Analysis, 1966). The two sides of one name are taken as independent, so `x - x` of limits is not zero.
 */
import { RATIO } from "../quantities/dimension.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { absolute, compare, negate, quantityOf } from "../quantities/quantity.ts";
import type { Operator } from "./quantity-arithmetic.ts";
import { combineQuantities, convertQuantity } from "./quantity-arithmetic.ts";
import type { Refusal } from "./refusal.ts";
import { isRefusal, refuse } from "./refusal.ts";
import type { Range } from "./value.ts";

/** Two ranges by one of the operators; a quantity is a range with both ends the same. */
export function combineRanges(operator: Operator, a: Range, b: Range): Range | Refusal {
  switch (operator) {
    case "+":
      return rangeOf([combineQuantities("+", a.lower, b.lower), combineQuantities("+", a.upper, b.upper)]);
    case "-":
      return rangeOf([combineQuantities("-", a.lower, b.upper), combineQuantities("-", a.upper, b.lower)]);
    case "*":
      return rangeOf(pairs(a, b).map(([x, y]) => combineQuantities("*", x, y)));
    case "/":
      return straddlesZero(b)
        ? refuse("out-of-range-argument", "cannot divide by limits that hold zero", { operand: 1 })
        : rangeOf(pairs(a, b).map(([x, y]) => combineQuantities("/", x, y)));
    case "^":
      return raiseRange(a, b);
  }
}

/** What a function gives over a range, where it rises or falls all along on each side of zero. */
export function mapRange(range: Range, change: (end: Quantity) => Quantity | Refusal): Range | Refusal {
  const zero = straddlesZero(range) ? [change({ ...range.lower, value: quantityOf(0).value })] : [];
  return rangeOf([change(range.lower), change(range.upper), ...zero]);
}

export function negateRange({ lower, upper }: Range): Range {
  return { lower: negate(upper), upper: negate(lower) };
}

export function absoluteRange(range: Range): Range | Refusal {
  return mapRange(range, absolute);
}

/** From the least to the greatest of quantities of one dimension; the first refusal among them, if any. */
function rangeOf(ends: readonly (Quantity | Refusal)[]): Range | Refusal {
  let range: Range | undefined;
  for (const end of ends) {
    if (isRefusal(end)) return end;
    range = {
      lower: range === undefined || compare(end, range.lower) === -1 ? end : range.lower,
      upper: range === undefined || compare(end, range.upper) === 1 ? end : range.upper,
    };
  }
  return range ?? refuse("out-of-range-argument", "there are no values to take limits of");
}

/** Both ends in another unit. */
export function convertRange(range: Range, to: Quantity["unit"]): Range | Refusal {
  const lower = convertQuantity(range.lower, to);
  if (isRefusal(lower)) return lower;
  const upper = convertQuantity(range.upper, to);
  return isRefusal(upper) ? upper : { lower, upper };
}

function raiseRange(a: Range, b: Range): Range | Refusal {
  if (compare(b.lower, b.upper) !== 0 || b.lower.dimension !== RATIO) {
    return refuse("wrong-dimension", "an exponent is one plain number", { operand: 1 });
  }
  const exponent = b.lower;
  if (exponent.value.isNegative() && straddlesZero(a)) {
    return refuse("out-of-range-argument", "cannot divide by limits that hold zero", { operand: 0 });
  }
  return mapRange(a, (end) => combineQuantities("^", end, exponent));
}

function pairs(a: Range, b: Range): readonly (readonly [Quantity, Quantity])[] {
  return [
    [a.lower, b.lower],
    [a.lower, b.upper],
    [a.upper, b.lower],
    [a.upper, b.upper],
  ];
}

function straddlesZero({ lower, upper }: Range): boolean {
  return lower.value.lessThanOrEqualTo(0) && upper.value.greaterThanOrEqualTo(0);
}
