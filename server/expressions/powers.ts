import type { Decimal } from "../quantities/decimal.ts";
import { decimal } from "../quantities/decimal.ts";
import { dimensionOf, RATIO } from "../quantities/dimension.ts";
import { power, squareRoot } from "../quantities/powers.ts";
import { coherentUnit, customaryUnit } from "../quantities/product-unit.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { convert } from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import { composeUnit, NO_UNIT } from "../quantities/unit.ts";
import { derivedQuantity } from "./derived-quantity.ts";
import type { Refusal } from "./refusal.ts";
import { isRefusal, refuse } from "./refusal.ts";
import { describeQuantity } from "./value.ts";

/**
 * `a ^ b`: whole powers exactly; halves, thirds and quarters as roots, exact where the root is, of a unit only where
 * the root of its dimension is one (the cube root of 8 cc is 20 mm); any power of a bare number.
 */
export function raise(a: Quantity, b: Quantity): Quantity | Refusal {
  const exponent = b.dimension === RATIO ? convert(b, NO_UNIT) : undefined;
  if (exponent === undefined || isFault(exponent)) {
    return refuse("wrong-dimension", `an exponent is a plain number, not ${describeQuantity(b)}`, {
      operand: 1,
    });
  }
  const share = fractionOf(exponent.value);
  if (share === undefined || share.root === 1 || a.value.isNegative()) return wholePower(a, exponent.value);
  const root = rootOf(a, share.root);
  return isRefusal(root) ? root : wholePower(root, share.power);
}

type Root = 2 | 3 | 4;

/** The square, cube or fourth root of a value that is not negative. */
export function rootOf(a: Quantity, root: Root): Quantity | Refusal {
  if (root === 3) return cubeRoot(a);
  const result = squareRoot(a);
  if (isFault(result)) {
    return a.value.isNegative()
      ? refuse("out-of-range-argument", `${describeQuantity(a)} is negative and has no square root`, {
          operand: 0,
        })
      : noRoot(a, "square root");
  }
  return root === 4 ? rootOf(result, 2) : result;
}

function wholePower(a: Quantity, exponent: Decimal): Quantity | Refusal {
  const result = power(a, exponent);
  if (!isFault(result)) return result;
  switch (result.fault) {
    case "division-by-zero":
      return refuse("out-of-range-argument", "cannot divide by zero: a negative power of it", { operand: 0 });
    case "temperature-readings":
      return refuse("wrong-dimension", result.message, { operand: 0 });
    case "power":
      return refuse(
        a.dimension === RATIO || exponent.isInteger() ? "out-of-range-argument" : "wrong-dimension",
        result.message,
        { operand: a.value.isNegative() && a.dimension === RATIO && !exponent.isInteger() ? 0 : 1 },
      );
    default:
      return refuse("out-of-range-argument", result.message);
  }
}

/** A third of every power in the dimension must be whole. */
function cubeRoot(a: Quantity): Quantity | Refusal {
  const exponents = a.dimension.exponents.map((exponent) => exponent / 3);
  if (exponents.some((exponent) => !Number.isInteger(exponent))) return noRoot(a, "cube root");
  const dimension = dimensionOf(exponents);
  const unit = a.unit.parts.every((part) => part.power % 3 === 0)
    ? composeUnit(a.unit.parts.map((part) => ({ ...part, power: part.power / 3 })))
    : (customaryUnit(dimension, a.unit.system) ?? coherentUnit(dimension));
  const cubed = convert(a, composeUnit(unit.parts.map((part) => ({ ...part, power: part.power * 3 }))));
  if (isFault(cubed)) return noRoot(a, "cube root");
  const value = cubed.value.cbrt();
  const exact = cubed.exact && value.pow(3).equals(cubed.value);
  return derivedQuantity(value, unit, a.figures, exact);
}

function noRoot(a: Quantity, name: string): Refusal {
  return refuse("wrong-dimension", `${describeQuantity(a)} has no ${name} among the dimensions`, {
    operand: 0,
  });
}

interface FractionalPower {
  readonly power: Decimal;
  readonly root: 1 | Root;
}

/** How far a third may be from 34 threes. */
const ROUNDING = decimal("1e-30");

/** An exponent as a whole power of a root; undefined where it is no such fraction. */
function fractionOf(exponent: Decimal): FractionalPower | undefined {
  for (const root of [1, 2, 3, 4] as const) {
    const multiple = exponent.times(root);
    const whole = multiple.round();
    if (multiple.minus(whole).abs().lessThanOrEqualTo(ROUNDING)) return { power: whole, root };
  }
  return undefined;
}
