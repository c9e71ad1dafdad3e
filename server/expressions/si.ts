/** Between quantities and the plain SI numbers that the functions of the trade compute with. */
import { coherentFloat } from "../quantities/coherent.ts";
import type { Decimal } from "../quantities/decimal.ts";
import { decimal, ZERO } from "../quantities/decimal.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { convert, quantityOf } from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import type { Unit } from "../quantities/unit.ts";
import { unit } from "../quantities/unit.ts";
import { derivedQuantity } from "./derived-quantity.ts";

/** Figures of a binary float that can be trusted after a formula; what is beyond is noise of its rounding. */
const TRUSTED_FIGURES = 12;
/** With exact inputs, a value of no more figures than these is a decimal that ends; of more, one that was cut off. */
const MOST_FIGURES_OF_AN_END = 8;
const FEWEST_FIGURES = 3;

/** Metres, kilograms, seconds, amperes, kelvins, radians, fractions; not finite where the quantity is beyond floats. */
export function siOf(quantity: Quantity): number {
  return coherentFloat(quantity);
}

/**
 * An SI number in a unit. `figures`: significant figures of the least precise input, undefined where all were exact;
 * a value that ends within them is shown without noughts behind it, as 27 and not as 27.0.
 * `size`: of the largest input of the dimension, beside which a difference that is nought but for rounding is nought.
 */
export function quantityFromSi(si: number, to: Unit, figures?: number, size = 0): Quantity {
  const value = Math.abs(si) < size * 10 ** -TRUSTED_FIGURES ? ZERO : inUnit(si, to);
  const trusted = value.toSignificantDigits(TRUSTED_FIGURES);
  const most = figures === undefined ? MOST_FIGURES_OF_AN_END : Math.max(FEWEST_FIGURES, figures);
  return derivedQuantity(trusted, to, figures, trusted.precision() <= most);
}

function inUnit(si: number, to: Unit): Decimal {
  if (to.offset === undefined) return decimal(si).div(decimal(coherentFloat(quantityOf(1, to))));
  const converted = convert(quantityOf(si, unit("K")), to);
  return isFault(converted) ? decimal(si) : converted.value;
}
