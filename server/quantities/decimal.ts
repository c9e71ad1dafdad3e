import { Decimal as RootDecimal } from "decimal.js";

/**
 * Decimal numbers of 34 significant digits, rounded half to even (the precision and rounding of IEEE 754
 * decimal128). The constructor: prefer `decimal(x)`, which rounds to 34 digits; a bare constructor keeps every digit
 * given. Not the BigNumber of mathjs, which is this class under another prototype: in a bundle that costs 6 ms at every
 * start, and 35 kB.
 */
export const Decimal = RootDecimal.clone({
  precision: 34,
  rounding: RootDecimal.ROUND_HALF_EVEN,
  modulo: RootDecimal.EUCLID,
});
export type Decimal = RootDecimal;

/** The same numbers at 130 digits: products of two 34-digit numbers and a factor, and then one division, are rounded once. */
const WideDecimal = Decimal.clone({ precision: 130, rounding: Decimal.ROUND_HALF_EVEN });

/** Significant digits of every result. */
export const PRECISION = 34;

export const ZERO: Decimal = new Decimal(0);
export const ONE: Decimal = new Decimal(1);

/** A decimal of at most 34 significant digits. A number is read by its shortest decimal form, so 0.1 is exactly 0.1. */
export function decimal(x: Decimal | string | number | bigint): Decimal {
  if (typeof x === "object" && isOurs(x) && x.precision() <= PRECISION) return x;
  const value = typeof x === "bigint" ? new Decimal(x.toString()) : new Decimal(x);
  return value.precision() > PRECISION ? value.toSignificantDigits(PRECISION) : value;
}

/** Whether two things are the same decimal: of the same precision, value and sign. */
export function areSameDecimals(one: unknown, other: unknown): boolean {
  if (!RootDecimal.isDecimal(one) || !RootDecimal.isDecimal(other)) return false;
  return (
    one.constructor === other.constructor && one.equals(other) && one.isNegative() === other.isNegative()
  );
}

/** `value · numerator / denominator`, rounded once to 34 digits, and whether nothing was rounded off. */
export function scale(
  value: Decimal,
  numerator: Decimal,
  denominator: Decimal,
): { value: Decimal; exact: boolean } {
  const short = scaledShort(value, numerator, denominator);
  if (short !== undefined) return { value: short, exact: true };
  const product = new WideDecimal(value).times(numerator);
  const quotient = product.div(denominator);
  const rounded = new Decimal(quotient.toSignificantDigits(PRECISION));
  return { value: rounded, exact: new WideDecimal(rounded).times(denominator).equals(product) };
}

/** The same where neither the product nor the quotient has more digits than are kept, as most that are written down have. */
function scaledShort(value: Decimal, numerator: Decimal, denominator: Decimal): Decimal | undefined {
  if (!fitsProduct(value, numerator)) return undefined;
  const product = numerator.equals(ONE) ? value : value.times(numerator);
  if (denominator.equals(ONE)) return product;
  const quotient = product.div(denominator);
  return fitsProduct(quotient, denominator) && quotient.times(denominator).equals(product)
    ? quotient
    : undefined;
}

/** Whether a product of two decimals has room for all of its digits. */
function fitsProduct(one: Decimal, other: Decimal): boolean {
  return isOurs(one) && isOurs(other) && one.precision() + other.precision() <= PRECISION;
}

/** Whether what is computed with a number has 34 digits. `instanceof` cannot tell: all decimals share a prototype. */
function isOurs(value: Decimal): boolean {
  return value.constructor === Decimal;
}

/** Whether a sum of two decimals has room for all of its digits, so that it need not be looked at whether it is exact. */
export function fitsSum(one: Decimal, other: Decimal): boolean {
  if (!one.isFinite() || !other.isFinite()) return false;
  if (one.isZero()) return other.precision() <= PRECISION;
  if (other.isZero()) return one.precision() <= PRECISION;
  const last = Math.min(one.e - one.precision(), other.e - other.precision());
  return Math.max(one.e, other.e) - last < PRECISION;
}

/** A product with every digit, of factors of at most 130 digits together. */
export function exactProduct(a: Decimal, b: Decimal): Decimal {
  return new Decimal(new WideDecimal(a).times(b));
}

/** The sign of `a · factorA - b · factorB`, computed without rounding (each of at most 60 digits). */
export function compareProducts(a: Decimal, factorA: Decimal, b: Decimal, factorB: Decimal): -1 | 0 | 1 {
  return new WideDecimal(a).times(factorA).comparedTo(new WideDecimal(b).times(factorB)) as -1 | 0 | 1;
}

/**
 * All digits of a decimal, without an exponent from 1e-12 up to 1e21; outside of that as `1e+30`.
 * `places`: print at least that many decimals.
 */
export function formatDecimal(value: Decimal, places = 0): string {
  if (value.isZero()) return places > 0 ? `0.${"0".repeat(places)}` : "0";
  if (value.e < -12 || value.e > 20) return value.toString();
  return value.toFixed(Math.max(places, value.decimalPlaces()));
}

/**
 * Significant figures of a number as written: `9.10` has 3, `0.05` 1, `1e-3` 1. Zeros at the end of a whole number
 * count (`1200` has 4): who writes them in a workshop has read them off. `0` and `0.00` have 1 and 2 (decimals, at least 1).
 */
export function significantFigures(text: string): number {
  const mantissa = text.replace(/[eE].*/, "").replace(/[^0-9.]/g, "");
  const digits = mantissa.replace(".", "").replace(/^0+/, "");
  return digits.length > 0 ? digits.length : Math.max(1, decimalPlaces(text));
}

/** Decimals of a number as written: `9.10` has 2, `1e-3` 3, `12` none. */
export function decimalPlaces(text: string): number {
  const match = /^[^.eE]*(?:\.([0-9]*))?(?:[eE]([+-]?[0-9]{1,4}))?$/.exec(text.trim());
  if (match === null) return 0;
  return Math.max(0, (match[1]?.length ?? 0) - Number(match[2] ?? 0));
}

/** Rounded half to even to so many significant figures. */
export function roundToSignificant(value: Decimal, figures: number): Decimal {
  return value.isZero() ? value : value.toSignificantDigits(figures, Decimal.ROUND_HALF_EVEN);
}

/** Text of a value with so many significant figures, the zeros at the end included: 39 with three is `39.0`. */
export function formatSignificant(value: Decimal, figures: number): string {
  const rounded = roundToSignificant(value, figures);
  if (rounded.isZero()) return "0";
  return formatDecimal(rounded, Math.max(0, figures - 1 - rounded.e));
}
