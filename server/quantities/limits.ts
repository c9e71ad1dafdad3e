import type { Quantity } from "./quantity.ts";
import { absolute, add, asDifference, compare, convert, multiply, negate, subtract } from "./quantity.ts";
import type { QuantityFault } from "./quantity-fault.ts";
import { isFault } from "./quantity-fault.ts";
import { NO_UNIT } from "./unit.ts";

/** What a measurement must satisfy. At least one of the two limits is there, or the nominal value alone is known. */
export interface Limits {
  readonly lower?: Quantity;
  readonly upper?: Quantity;
  /** What was aimed at, where a tolerance was written. */
  readonly nominal?: Quantity;
  /** The size when new, from which wear is counted. */
  readonly fresh?: Quantity;
}

/** Limits that cannot be made. */
export type LimitsFault =
  | QuantityFault
  | { readonly fault: "limits-crossed"; readonly message: string }
  | { readonly fault: "percent-of-zero"; readonly message: string };

/** `min 8.4 mm`, `max 0.10 mm` or `54.00..54.05 mm`; a lower limit above the upper one is a fault. */
export function boundLimits(lower: Quantity | undefined, upper: Quantity | undefined): Limits | LimitsFault {
  if (lower !== undefined && upper !== undefined) {
    const order = compare(lower, upper);
    if (typeof order !== "number") return order;
    if (order === 1) return { fault: "limits-crossed", message: "the lower limit is above the upper one" };
  }
  return { ...(lower === undefined ? {} : { lower }), ...(upper === undefined ? {} : { upper }) };
}

/** A value to aim at, without a tolerance. */
export function nominalLimits(nominal: Quantity): Limits {
  return { nominal };
}

/**
 * `54 mm ± 0.05 mm`, or in percent of the nominal's size; of a nominal that is itself in percent a percentage is in points
 * (60 % ± 5 % is 55 % to 65 %). Percent of nothing is a fault. A temperature tolerance is a difference.
 */
export function toleranceLimits(nominal: Quantity, tolerance: Quantity): Limits | LimitsFault {
  return asymmetricLimits(nominal, absolute(tolerance), negate(absolute(tolerance)));
}

/** `54 mm +0.05/-0.02`: the upper and the lower deviation with their signs, percentages as in `toleranceLimits`. */
export function asymmetricLimits(nominal: Quantity, above: Quantity, below: Quantity): Limits | LimitsFault {
  const upper = deviated(nominal, above);
  if (isFault(upper)) return upper;
  const lower = deviated(nominal, below);
  if (isFault(lower)) return lower;
  const limits = boundLimits(lower, upper);
  return isFault(limits) ? limits : { ...limits, nominal };
}

/**
 * What there is to use up: upper less lower; with one limit, between new and the limit; a bare maximum from zero; undefined
 * for a bare minimum. In the unit of the limit, a difference.
 */
export function zone(limits: Limits): Quantity | undefined {
  const { lower, upper, fresh } = limits;
  if (lower !== undefined && upper !== undefined) return distance(upper, lower);
  const bound = upper ?? lower;
  if (bound === undefined) return undefined;
  if (fresh !== undefined) return distance(fresh, bound);
  return upper === undefined ? undefined : asDifference(absolute(upper));
}

/** How far one value lies from another, without a sign, in the unit of the second. */
function distance(a: Quantity, b: Quantity): Quantity | undefined {
  const inUnit = convert(a, b.unit);
  if (isFault(inUnit)) return undefined;
  const difference = inUnitOf(subtract(inUnit, b), b);
  return difference === undefined ? undefined : absolute(difference);
}

/** A difference of two temperatures comes in K; what a user reads is in the unit written. */
function inUnitOf(difference: Quantity | QuantityFault, written: Quantity): Quantity | undefined {
  if (isFault(difference)) return undefined;
  const converted = convert(difference, written.unit);
  return isFault(converted) ? undefined : converted;
}

function deviated(nominal: Quantity, deviation: Quantity): Quantity | LimitsFault {
  if (deviation.unit.symbol !== "%" || nominal.unit.symbol === "%")
    return add(nominal, asDifference(deviation));
  if (nominal.value.isZero()) {
    return { fault: "percent-of-zero", message: "a tolerance in percent of zero is none: write it in units" };
  }
  const share = convert(deviation, NO_UNIT);
  if (isFault(share)) return share;
  const size = multiply(asDifference(absolute(nominal)), share);
  return isFault(size) ? size : add(nominal, size);
}
