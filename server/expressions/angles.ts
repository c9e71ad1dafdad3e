/**
 * Sines and their kind over decimals. Angles are brought to the first half of a right angle in degrees, exactly, and
 * the rest is computed with 50 digits by decimal.js, so that sin(30 deg) is 0.5 and cos(90 deg) is 0.
 */
import { Decimal, decimal, PRECISION } from "../quantities/decimal.ts";

/** Digits enough that rounding to 34 of them gives the nearest. */
const Wide = Decimal.clone({ precision: 50, rounding: Decimal.ROUND_HALF_EVEN });
const PI = Wide.acos(-1);

/** Of an angle in degrees. */
export function sine(degrees: Decimal): Decimal {
  const turned = degrees.mod(360);
  const positive = turned.isNegative() ? turned.plus(360) : turned;
  if (positive.greaterThanOrEqualTo(180)) return sineOfHalfTurn(positive.minus(180)).negated();
  return sineOfHalfTurn(positive);
}

/** Of an angle in degrees. */
export function cosine(degrees: Decimal): Decimal {
  return sine(degrees.mod(360).plus(90));
}

/** Of an angle in degrees; undefined where there is none, at 90 deg. */
export function tangent(degrees: Decimal): Decimal | undefined {
  const below = cosine(degrees);
  return below.isZero() ? undefined : rounded(new Wide(sine(degrees)).div(below));
}

/** In degrees, from -90 to 90; the value lies within -1 and 1. */
export function arcsine(value: Decimal): Decimal {
  return inDegrees(new Wide(value).asin());
}

/** In degrees, from 0 to 180; the value lies within -1 and 1. */
export function arccosine(value: Decimal): Decimal {
  return inDegrees(new Wide(value).acos());
}

/** In degrees, between -90 and 90. */
export function arctangent(value: Decimal): Decimal {
  return inDegrees(new Wide(value).atan());
}

/** Of 0 up to 180 degrees. */
function sineOfHalfTurn(degrees: Decimal): Decimal {
  const fromAxis = degrees.greaterThan(90) ? decimal(180).minus(degrees) : degrees;
  return fromAxis.greaterThan(45)
    ? rounded(inRadians(decimal(90).minus(fromAxis)).cos())
    : rounded(inRadians(fromAxis).sin());
}

function inRadians(degrees: Decimal): Decimal {
  return new Wide(degrees).times(PI).div(180);
}

function inDegrees(radians: Decimal): Decimal {
  return rounded(radians.times(180).div(PI));
}

function rounded(value: Decimal): Decimal {
  return new Decimal(value.toSignificantDigits(PRECISION));
}
