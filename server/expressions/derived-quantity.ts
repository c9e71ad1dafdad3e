import type { Decimal } from "../quantities/decimal.ts";
import { decimal, ZERO } from "../quantities/decimal.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { quantityOf } from "../quantities/quantity.ts";
import type { Unit } from "../quantities/unit.ts";

/** How many figures an exact result may have beyond those of its inputs and still be shown in full. */
const FIGURES_BEYOND = 3;
const FEWEST_FIGURES = 3;
/** The same where the inputs are exact. */
const MOST_EXACT_FIGURES = 10;

/**
 * A result in a unit, with the figures of its least precise input (undefined: all were exact). `exact`: nothing was
 * rounded off; it is then shown in full unless it runs on far beyond those figures.
 */
export function derivedQuantity(
  value: Decimal,
  unit: Unit,
  figures: number | undefined,
  exact: boolean,
): Quantity {
  const most =
    figures === undefined ? MOST_EXACT_FIGURES : Math.max(FEWEST_FIGURES, figures) + FIGURES_BEYOND;
  const rounded = value.isZero() ? ZERO : decimal(value);
  return { ...quantityOf(rounded, unit), figures, exact: exact && rounded.precision() <= most };
}
