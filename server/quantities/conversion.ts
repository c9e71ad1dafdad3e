import { Decimal } from "./decimal.ts";
import type { Rational } from "./rational.ts";
import { multiplyRational, powerRational, UNITY } from "./rational.ts";
import type { Unit } from "./unit.ts";

/** A factor between two units of one dimension: a value times `numerator / denominator`. */
export interface Conversion {
  readonly numerator: Decimal;
  readonly denominator: Decimal;
  /** The factor is one. */
  readonly identity: boolean;
}

const conversions = new WeakMap<Unit, WeakMap<Unit, Conversion>>();

/** The factor from one unit to another, remembered by pair. The caller has checked that the dimensions agree. */
export function conversion(from: Unit, to: Unit): Conversion {
  let ofFrom = conversions.get(from);
  if (ofFrom === undefined) {
    ofFrom = new WeakMap();
    conversions.set(from, ofFrom);
  }
  let result = ofFrom.get(to);
  if (result === undefined) {
    result = conversionOf(multiplyRational(from.factor, powerRational(to.factor, -1)));
    ofFrom.set(to, result);
  }
  return result;
}

/** A rational factor as decimals with every digit. */
export function conversionOf(factor: Rational): Conversion {
  return {
    numerator: new Decimal(factor.numerator.toString()),
    denominator: new Decimal(factor.denominator.toString()),
    identity: factor.numerator === UNITY.numerator && factor.denominator === UNITY.denominator,
  };
}
