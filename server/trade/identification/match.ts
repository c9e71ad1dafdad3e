/** One candidate held against what was measured: dimension by dimension, and all of them together. */

import type { Candidate, Expected } from "./candidate.ts";
import { statedBy } from "./candidate.ts";
import type { FamilyDimension } from "./family.ts";
import { isPerInch, plainName } from "./family.ts";
import type { GivenDimension } from "./given.ts";
import type { FitState } from "./misfit.ts";
import { fitOf, jointMisfit, scoreOf, UNKNOWN_MISFIT } from "./misfit.ts";

/** A given dimension against what a candidate states of it; SI units. */
export type ComparedDimension = { readonly given: GivenDimension } & (
  | { readonly is: "not stated" }
  | {
      readonly is: "compared";
      /** The candidate's name of it. */
      readonly name: string;
      readonly expected: Expected;
      /** Measured less nominal. */
      readonly off: number;
      /** Expanded: as its author states it, else as assumed; never less than the best way of measuring leaves. */
      readonly uncertainty: number;
      readonly state: FitState;
      readonly misfit: number;
    }
);

export interface Match {
  readonly candidate: Candidate;
  readonly dimensions: readonly ComparedDimension[];
  /** No dimension is outside. */
  readonly fits: boolean;
  readonly misfit: number;
  readonly score: number;
}

/** One candidate against what was measured; undefined where it states none of it. */
export function compareWith(candidate: Candidate, given: readonly GivenDimension[]): Match | undefined {
  const taken = new Map<string, GivenDimension>();
  const dimensions = given.map((one) => compare(candidate, one, taken));
  const compared = dimensions.flatMap((one) => (one.is === "compared" ? [one] : []));
  if (compared.length === 0) return undefined;
  const misfit = jointMisfit(dimensions.map((one) => (one.is === "compared" ? one.misfit : UNKNOWN_MISFIT)));
  const fits = compared.every(({ state }) => state !== "outside");
  return { candidate, dimensions, fits, misfit, score: scoreOf(misfit, fits) };
}

/** How many of the given dimensions a candidate states. */
export function countStated({ dimensions }: Match): number {
  return dimensions.filter(({ is }) => is === "compared").length;
}

/** How many of the given dimensions were named as the candidate names them, not by another name. */
export function countNamed({ dimensions }: Match): number {
  return dimensions.filter(
    (one) => one.is === "compared" && plainName(one.given.name) === plainName(one.name),
  ).length;
}

/** Where no table has a figure, of a donor: a vernier caliper for lengths, else 1 %; common practice, no source. */
const ASSUMED_LENGTH = 0.00005;
const ASSUMED_SHARE = 0.01;
/** Dirt, burrs and rust on a found part leave no length surer than this; common practice, no source. */
const SUREST_LENGTH = 0.00002;

/**
 * @param taken the dimensions that have been compared already: width and height of a key are not both the width of a
 * bearing; but a pitch may be given as such and as threads per inch
 */
function compare(
  candidate: Candidate,
  given: GivenDimension,
  taken: Map<string, GivenDimension>,
): ComparedDimension {
  const stated = statedBy(candidate, given);
  const before = stated && taken.get(stated.name);
  if (stated === undefined || (before !== undefined && isPerInch(before.name) === isPerInch(given.name)))
    return { is: "not stated", given };
  const { name, expected, dimension } = stated;
  taken.set(name, given);
  const uncertainty = uncertaintyOf(given, dimension);
  const { state, misfit } = fitOf(given.value, uncertainty, expected);
  return {
    is: "compared",
    given,
    name,
    expected,
    off: given.value - expected.nominal,
    uncertainty,
    state,
    misfit,
  };
}

/** As its author states it, else as assumed; never less than the best way of measuring a found part leaves. */
function uncertaintyOf(given: GivenDimension, dimension: FamilyDimension | undefined): number {
  const isLength = given.is === "length";
  const usual = dimension?.assumed ?? (isLength ? ASSUMED_LENGTH : ASSUMED_SHARE * given.value);
  const surest = dimension?.measuring.uncertainty ?? (isLength ? SUREST_LENGTH : 0);
  const known = given.uncertainty ?? Math.max(usual, fromResolution(given.resolution ?? 0));
  return Math.max(known, surest);
}

/** Expanded uncertainty of a figure that is known to its last decimal only (JCGM 100, 4.3.7). */
function fromResolution(resolution: number): number {
  return resolution / Math.sqrt(3);
}
