/**
 * Hours of work as exact ratios. The mean of three estimates is a sixth, a supplier's week a seventh: rounded, they
 * would leave a critical path with a float of a trillionth of an hour, or without one.
 */
import type { Decimal } from "../quantities/decimal.ts";
import { Decimal as DecimalNumber, ONE, scale } from "../quantities/decimal.ts";
import type { Rational } from "../quantities/rational.ts";
import {
  addRational,
  compareRational,
  multiplyRational,
  powerRational,
  rational,
} from "../quantities/rational.ts";

/** Hours, or days, or the square of either in a variance. */
export type Hours = Rational;

export const NO_HOURS: Hours = { numerator: 0n, denominator: 1n };
const MINUS_ONE: Rational = { numerator: -1n, denominator: 1n };

/** Exactly the decimal; anything but a finite number throws. */
export function hours(value: Decimal | number | string): Hours {
  return rational(new DecimalNumber(value).toString());
}

export function addHours(a: Hours, b: Hours): Hours {
  return addRational(a, b);
}

export function subtractHours(a: Hours, b: Hours): Hours {
  return addRational(a, multiplyRational(b, MINUS_ONE));
}

export function timesHours(a: Hours, factor: Rational): Hours {
  return multiplyRational(a, factor);
}

/** The ratio of two times; the second is not zero. */
export function shareOf(part: Hours, whole: Hours): Rational {
  return multiplyRational(part, powerRational(whole, -1));
}

/** -1, 0 or 1. */
export function compareHours(a: Hours, b: Hours): -1 | 0 | 1 {
  return compareRational(a, b);
}

export function isNoHours(a: Hours): boolean {
  return a.numerator === 0n;
}

export function greaterHours(a: Hours, b: Hours): Hours {
  return compareHours(a, b) < 0 ? b : a;
}

export function lesserHours(a: Hours, b: Hours): Hours {
  return compareHours(b, a) < 0 ? b : a;
}

/** The next whole number that is not less. */
export function wholeAbove(a: Rational): number {
  const down = a.numerator / a.denominator;
  const reached = down * a.denominator >= a.numerator;
  return Number(reached ? down : down + 1n);
}

/** Rounded once, half to even, to the digits of a decimal. */
export function decimalHours(a: Hours): Decimal {
  return scale(ONE, new DecimalNumber(a.numerator.toString()), new DecimalNumber(a.denominator.toString()))
    .value;
}
