/**
 * How badly a measured dimension fits an expected one, as one number: 0 within the limits of a new part, 1 where the
 * allowance ends, growing steadily with the distance from those limits.
 *
 * With U the expanded uncertainty of the measurement, w the allowance for wear on that side (0 where wear does not take it)
 * and g the distance from the limits of a new part:
 * - without wear, g / U;
 * - with wear, g / 2U up to U, then 1/2 + (g - U) / 2w up to U + w, then g / (U + w).
 */

import type { Expected } from "./candidate.ts";

export type FitState =
  /** As a new part may measure. */
  | "as made"
  /** Off by no more than the uncertainty of the measurement. */
  | "within the uncertainty"
  | "worn"
  | "outside";

export interface Fit {
  readonly misfit: number;
  readonly state: FitState;
  /** From the nearest limit of a new part; negative below it, 0 within. SI units. */
  readonly beyond: number;
}

/** One, and a hair of rounding. */
const MOST_THAT_FITS = 1 + 1e-9;

/** @param uncertainty expanded, k = 2; SI units as the value */
export function fitOf(value: number, uncertainty: number, { lower, upper, nominal, worn }: Expected): Fit {
  // A hair of rounding is no distance.
  const hair = 1e-9 * Math.abs(nominal);
  const below = lower - value;
  const above = value - upper;
  const distance = Math.max(below, above);
  if (distance <= hair) return { misfit: 0, state: "as made", beyond: 0 };
  const beyond = below > above ? -below : above;
  const known = Math.max(uncertainty, hair, Number.MIN_VALUE);
  const wear = worn !== undefined && (worn.side === "smaller") === beyond < 0 ? worn.by : 0;
  const misfit = misfitOf(distance, known, wear);
  if (misfit > MOST_THAT_FITS) return { misfit, state: "outside", beyond };
  return { misfit, state: distance <= known ? "within the uncertainty" : "worn", beyond };
}

function misfitOf(distance: number, uncertainty: number, wear: number): number {
  if (wear === 0) return distance / uncertainty;
  if (distance <= uncertainty) return distance / uncertainty / 2;
  if (distance <= uncertainty + wear) return 1 / 2 + (distance - uncertainty) / wear / 2;
  return distance / (uncertainty + wear);
}

/** Misfit of a dimension that a candidate does not state: half-way, neither for it nor against it. */
export const UNKNOWN_MISFIT = 1 / 2;

/** The joint misfit of all dimensions: the root of their mean square. */
export function jointMisfit(misfits: readonly number[]): number {
  if (misfits.length === 0) return 0;
  return Math.sqrt(misfits.reduce((sum, each) => sum + each ** 2, 0) / misfits.length);
}

/**
 * 1 where every dimension is as made, 1/2 where every one is at the end of its allowance; of what does not fit half of that
 * again, so that it is always less than 1/2.
 */
export function scoreOf(joint: number, fits: boolean): number {
  return (fits ? 1 : 1 / 2) / (1 + joint ** 2);
}
