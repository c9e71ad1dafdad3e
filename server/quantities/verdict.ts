import type { Decimal } from "./decimal.ts";
import { decimal } from "./decimal.ts";
import { sameExponents } from "./dimension.ts";
import { compareShifted } from "./exact-order.ts";
import type { Limits } from "./limits.ts";
import { zone } from "./limits.ts";
import type { Quantity } from "./quantity.ts";
import { absolute, asDifference, compare, convert, negate, subtract } from "./quantity.ts";
import type { QuantityFault } from "./quantity-fault.ts";
import { dimensionFault, isFault } from "./quantity-fault.ts";

/**
 * What a reading proves about a limit, by the decision rule of ISO 14253-1 with the expanded uncertainty U (k = 2):
 * conformity within the limits drawn in by U, nonconformity outside of the limits widened by U, nothing in between.
 * `near`: within, but little of the zone is left.
 */
export type VerdictName = "within" | "near" | "uncertain" | "outside";

export type Side = "upper" | "lower";

export interface Verdict {
  readonly verdict: VerdictName;
  /** The reading judged: of several the one with the least margin. */
  readonly reading: Quantity;
  readonly uncertainty: Quantity | undefined;
  /** The limit that is nearest to the reading, or that it is beyond. */
  readonly side: Side;
  readonly limit: Quantity;
  /** From the reading to that limit, in the reading's unit; negative beyond it. */
  readonly margin: Quantity;
  /** How far beyond the limit; undefined inside it. */
  readonly excess: Quantity | undefined;
  /** Greatest less least of several readings. */
  readonly spread: Quantity | undefined;
  readonly zone: Quantity | undefined;
}

/** There is nothing to judge by. */
export interface NoLimitFault {
  readonly fault: "no-limit";
  readonly message: string;
}

/** U of each reading: one for all, one by reading, or none known. */
export type ReadingUncertainty = Quantity | undefined | ((reading: Quantity) => Quantity | undefined);

/** How the guard band stands to the standard's editions, for a hover or a report. */
export const GUARD_BAND_REMARK =
  "U at k = 2 is the guard band of the 1998 and 2013 editions of ISO 14253-1; it is stricter than the default of the 2017 edition";

/**
 * Judges one or more readings of one thing: within when lower ≤ m - U and m + U ≤ upper, outside when m - U > upper or
 * m + U < lower, else uncertain; near when within and the margin is less than `near` (a share) of the zone. Decimals are
 * compared exactly, whatever the units. Without a U a reading is taken as exact.
 */
export function judge(
  readings: readonly [Quantity, ...Quantity[]],
  uncertainty: ReadingUncertainty,
  limits: Limits,
  near: Decimal | number,
): Verdict | NoLimitFault | QuantityFault {
  const worst = worstOf(readings, limits);
  if (isFault(worst)) return worst;
  const { reading, side, limit, margin } = worst;
  const given = typeof uncertainty === "function" ? uncertainty(reading) : uncertainty;
  const band = given === undefined ? undefined : asDifference(absolute(given));
  const decided = decide(reading, band, limits);
  if (typeof decided !== "string") return decided;
  const spread = spreadOf(readings);
  if (spread !== undefined && isFault(spread)) return spread;
  const whole = zone(limits);
  const verdict = decided === "within" && isNear(margin, whole, near) ? "near" : decided;
  return {
    verdict,
    reading,
    uncertainty: band,
    side,
    limit,
    margin,
    excess: margin.value.isNegative() && !margin.value.isZero() ? absolute(margin) : undefined,
    spread,
    zone: whole,
  };
}

/** Verdicts on readings that were taken as exact, by the limits and the reading: the same few are asked for again and again. */
const exactVerdicts = new WeakMap<Limits, WeakMap<Quantity, ReturnType<typeof judge>>>();

/** Judges one reading as if it had no uncertainty, and as near to nothing. */
export function judgeExactly(reading: Quantity, limits: Limits): Verdict | NoLimitFault | QuantityFault {
  const ofLimits = exactVerdicts.get(limits) ?? new WeakMap<Quantity, ReturnType<typeof judge>>();
  exactVerdicts.set(limits, ofLimits);
  const known = ofLimits.get(reading);
  if (known !== undefined) return known;
  const verdict = judge([reading], undefined, limits, 0);
  ofLimits.set(reading, verdict);
  return verdict;
}

interface Nearest {
  readonly reading: Quantity;
  readonly side: Side;
  readonly limit: Quantity;
  readonly margin: Quantity;
}

function worstOf(readings: readonly Quantity[], limits: Limits): Nearest | NoLimitFault | QuantityFault {
  let worst: Nearest | undefined;
  for (const reading of readings) {
    for (const side of ["upper", "lower"] as const) {
      const limit = limits[side];
      if (limit === undefined) continue;
      const margin = marginTo(reading, side, limit);
      if (isFault(margin)) return margin;
      if (worst === undefined || compare(margin, worst.margin) === -1)
        worst = { reading, side, limit, margin };
    }
  }
  return worst ?? { fault: "no-limit", message: "there is neither a lower nor an upper limit" };
}

/** In the reading's unit; a temperature margin too, as a difference. */
function marginTo(reading: Quantity, side: Side, limit: Quantity): Quantity | QuantityFault {
  if (compare(reading, limit) === 0) return nothingIn(reading);
  const towards = subtract(reading, limit);
  if (isFault(towards)) return towards;
  const written = convert(towards, reading.unit);
  if (isFault(written)) return written;
  return side === "upper" ? negate(written) : written;
}

/** Readings and limits that are equal have no margin, even where a conversion between their units has no end. */
function nothingIn(reading: Quantity): Quantity {
  return { ...asDifference(reading), value: decimal(0), exact: true };
}

function decide(
  reading: Quantity,
  band: Quantity | undefined,
  limits: Limits,
): "within" | "uncertain" | "outside" | QuantityFault {
  let decision: "within" | "uncertain" = "within";
  for (const side of ["upper", "lower"] as const) {
    const limit = limits[side];
    if (limit === undefined) continue;
    if (band !== undefined && !sameExponents(reading.dimension, band.dimension)) {
      return dimensionFault("subtract", reading, band);
    }
    const beyond = side === "upper" ? 1 : -1;
    const towardsInside = band === undefined ? undefined : side === "upper" ? negate(band) : band;
    const towardsOutside = towardsInside === undefined ? undefined : negate(towardsInside);
    if (compareShifted(reading, towardsInside, limit) === beyond) return "outside";
    if (compareShifted(reading, towardsOutside, limit) === beyond) decision = "uncertain";
  }
  return decision;
}

function isNear(margin: Quantity, whole: Quantity | undefined, near: Decimal | number): boolean {
  if (whole === undefined) return false;
  const threshold = { ...whole, value: whole.value.times(near) };
  return compare(margin, threshold) === -1;
}

function spreadOf(readings: readonly [Quantity, ...Quantity[]]): Quantity | undefined | QuantityFault {
  if (readings.length < 2) return undefined;
  let [least, most]: [Quantity, Quantity] = [readings[0], readings[0]];
  for (const reading of readings) {
    if (compare(reading, least) === -1) least = reading;
    if (compare(reading, most) === 1) most = reading;
  }
  const spread = subtract(most, least);
  return isFault(spread) ? spread : convert(spread, most.unit);
}
