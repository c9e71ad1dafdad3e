/** Powers and roots of quantities. */
import type { Decimal } from "./decimal.ts";
import { decimal, ONE, PRECISION } from "./decimal.ts";
import type { Dimension } from "./dimension.ts";
import { describeDimension, RATIO, rootDimension } from "./dimension.ts";
import { coherentUnit, customaryUnit } from "./product-unit.ts";
import type { Quantity } from "./quantity.ts";
import { convert, divide, LARGEST_POWER, multiply, quantityOf, rescaled, withinReach } from "./quantity.ts";
import type { QuantityFault } from "./quantity-fault.ts";
import { isFault, powerFault, zeroFault } from "./quantity-fault.ts";
import type { Unit } from "./unit.ts";
import { composeUnit, NO_UNIT } from "./unit.ts";

const LARGEST_POWER_OF_NUMBER = 1000;

/** `a` to a whole power of at most 12; a bare number to any power of at most 1000, where that is a real number. */
export function power(a: Quantity, exponent: Decimal | number): Quantity | QuantityFault {
  const by = decimal(exponent);
  if (a.dimension === RATIO) return powerOfNumber(a, by);
  if (by.equals(0.5)) return squareRoot(a);
  if (!by.isInteger() || by.abs().greaterThan(LARGEST_POWER)) {
    return powerFault(`a quantity with a unit takes a whole power of at most ${LARGEST_POWER}, not ${by}`);
  }
  let result = quantityOf(ONE);
  for (let index = 0; index < by.abs().toNumber(); index++) {
    const step = by.isNegative() ? divide(result, a) : multiply(result, a);
    if (isFault(step)) return step;
    result = step;
  }
  return result;
}

/** The square root; of a quantity only where every power in its dimension is even. */
export function squareRoot(a: Quantity): Quantity | QuantityFault {
  if (a.value.isNegative() && !a.value.isZero()) return powerFault("a negative value has no square root");
  const dimension = rootDimension(a.dimension);
  if (dimension === undefined) {
    return powerFault(
      `${describeDimension(a.dimension)} (${a.unit.symbol}) has no square root: it is not the square of a dimension`,
    );
  }
  const root = rootUnit(a.unit, dimension);
  const squared = convert(a, composeUnit(root.parts.map((part) => ({ ...part, power: part.power * 2 }))));
  if (isFault(squared)) return squared;
  const value = squared.value.squareRoot();
  const exact = squared.exact && value.times(value).equals(squared.value);
  return rescaled(a, root, dimension, value, exact);
}

function powerOfNumber(a: Quantity, by: Decimal): Quantity | QuantityFault {
  const base = convert(a, NO_UNIT);
  if (isFault(base)) return base;
  if (by.abs().greaterThan(LARGEST_POWER_OF_NUMBER)) {
    return powerFault(`a power beyond ${LARGEST_POWER_OF_NUMBER} is out of reach`);
  }
  const value = base.value.pow(by);
  if (value.isNaN()) return powerFault("a negative number has no such power");
  if (!value.isFinite() && base.value.isZero()) return zeroFault("power");
  const exact = base.exact && by.isInteger() && !by.isNegative() && value.precision() < PRECISION;
  return withinReach("power", rescaled(base, NO_UNIT, RATIO, value, exact));
}

function rootUnit(unit: Unit, dimension: Dimension): Unit {
  if (unit.parts.every((part) => part.power % 2 === 0)) {
    return composeUnit(unit.parts.map((part) => ({ ...part, power: part.power / 2 })));
  }
  return customaryUnit(dimension, unit.system) ?? coherentUnit(dimension);
}
