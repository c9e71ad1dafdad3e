import { decimal } from "./decimal.ts";
import type { Quantity } from "./quantity.ts";
import { absolute, add, asDifference, computedQuantity, convert, multiply, quantityOf } from "./quantity.ts";
import type { QuantityFault } from "./quantity-fault.ts";
import { isFault } from "./quantity-fault.ts";
import { NO_UNIT } from "./unit.ts";

/** Coverage factor of every expanded uncertainty here: about 95 % of a normal distribution (JCGM 100:2008, 6.2 and 6.3). */
const COVERAGE_FACTOR = 2;

/** Significant figures an uncertainty is shown with; more say nothing (JCGM 100:2008, 7.2.6 has at most two). */
const FIGURES = 3;

/** How a gauge states its expanded uncertainty: `± 0.004 mm`, or `± 4 %` of the reading. */
export type GaugeUncertainty =
  | { readonly of: "fixed"; readonly uncertainty: Quantity }
  | { readonly of: "reading"; readonly percent: Quantity };

/** Reads `± 0.004 mm` as fixed and `± 4 %` as a share of the reading. */
export function gaugeUncertainty(stated: Quantity): GaugeUncertainty {
  return stated.unit.symbol === "%"
    ? { of: "reading", percent: absolute(stated) }
    : { of: "fixed", uncertainty: asDifference(absolute(stated)) };
}

/** Standard uncertainty of a value known to lie anywhere within ± `halfWidth`: halfWidth / √3 (JCGM 100:2008, 4.3.7). */
export function standardOfRectangle(halfWidth: Quantity): Quantity {
  const value = halfWidth.value.abs().div(decimal(3).squareRoot());
  return {
    ...computedQuantity(value, halfWidth.unit, FIGURES),
    dimension: asDifference(halfWidth).dimension,
  };
}

/**
 * Expanded uncertainty (k = 2) of a reading that is known only to the resolution: the true value lies within half a
 * resolution of it, so U = 2 · (resolution / 2) / √3 = resolution / √3 (JCGM 100:2008, 4.3.7 and F.2.2.1).
 */
export function expandedFromResolution(resolution: Quantity): Quantity {
  const half = { ...resolution, value: resolution.value.div(2) };
  return expanded(standardOfRectangle(half));
}

/** U = k · u with k = 2 (JCGM 100:2008, 6.2.1). */
export function expanded(standard: Quantity): Quantity {
  return { ...standard, value: standard.value.times(COVERAGE_FACTOR), places: undefined };
}

/** Expanded uncertainty of one reading, in the unit of the reading for a share of it. */
export function uncertaintyOf(gauge: GaugeUncertainty, reading: Quantity): Quantity | QuantityFault {
  if (gauge.of === "fixed") return gauge.uncertainty;
  const share = convert(gauge.percent, NO_UNIT);
  if (isFault(share)) return share;
  return multiply(asDifference(absolute(reading)), quantityOf(share.value));
}

/**
 * Of a sum or difference of independent readings: the root of the sum of squares, in the unit of the first
 * (JCGM 100:2008, equation 10 with sensitivities of one; the same k throughout).
 */
export function combineExpanded(first: Quantity, ...others: readonly Quantity[]): Quantity | QuantityFault {
  let squares = first.value.times(first.value);
  for (const other of others) {
    const sameUnit = add({ ...asDifference(first), value: decimal(0) }, asDifference(other));
    if (isFault(sameUnit)) return sameUnit;
    squares = squares.plus(sameUnit.value.times(sameUnit.value));
  }
  return {
    ...computedQuantity(squares.squareRoot(), first.unit, FIGURES),
    dimension: asDifference(first).dimension,
  };
}
