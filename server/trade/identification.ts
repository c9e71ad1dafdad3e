/**
 * What an unknown part can be, from a few of its dimensions: the standard parts and donors whose dimensions lie nearest to
 * all of them at once, within the uncertainty of each measurement, the tolerance of a new part and an allowance for wear.
 *
 * A candidate fits when no dimension is outside. Its score follows from the joint misfit (`identification/misfit.ts`): 1
 * where every dimension is as made, 1/2 where every one is at the end of its allowance, less where it does not fit. A
 * dimension that a candidate does not state counts half-way. Of the standard parts those compete that state most of what was
 * given and fit; of the donors likewise; of several dimensions they must state at least two. Of equal scores those stand
 * first that have the dimensions by the names that were given, then in the order of the tables.
 */

import type { Candidate } from "./identification/candidate.ts";
import { statedBy } from "./identification/candidate.ts";
import { dimensionOfFamily } from "./identification/family.ts";
import type { GivenDimension } from "./identification/given.ts";
import type { Match } from "./identification/match.ts";
import { compareWith, countNamed, countStated } from "./identification/match.ts";
import { standardCandidates } from "./identification/standard-candidates.ts";
import type { Difference } from "./identification/tell-apart.ts";
import { tellApart } from "./identification/tell-apart.ts";

export interface Identification {
  readonly given: readonly GivenDimension[];
  /** Those that nothing known has. */
  readonly unknown: readonly GivenDimension[];
  /** Everything that fits, best first. */
  readonly candidates: readonly Match[];
  /** What does not fit but is near: where something fits, only what could be confused with it. */
  readonly nearest: readonly Match[];
  /** How the best is told from what else fits or nearly does. */
  readonly tellApart: readonly Difference[];
}

const MOST_NEAREST = 3;
/**
 * With what misfit, and how far off for its size, a dimension that does not fit could still be confused; common practice, no
 * source.
 */
const NEAR_MISS = 4;
const NEAR_MISS_SHARE = 0.08;

/** @param donors more candidates, which stand before the standard parts where the scores are equal */
export function identify(
  given: readonly GivenDimension[],
  donors: readonly Candidate[] = [],
): Identification {
  const everything = [donors, standardCandidates()];
  const unknown = given.filter((one) => !everything.flat().some((candidate) => statedBy(candidate, one)));
  const least = Math.min(2, given.length - unknown.length);
  const fields = everything.map((candidates) => competitors(candidates, given, least));
  const fitting = fields.flatMap(({ fits }) => fits).sort(bestFirst);
  const others = fields.flatMap((field) => field.others).sort((one, other) => one.misfit - other.misfit);
  const [best] = fitting;
  const nearest =
    best === undefined ? eachKindFirst(others) : others.filter((other) => isNearMiss(other, best));
  const shown = nearest.slice(0, MOST_NEAREST);
  return { given, unknown, candidates: fitting, nearest: shown, tellApart: tellApart(fitting, shown) };
}

/** Of equal scores first what has the dimensions by the names that were given: a bore is a bearing's before it is a nut's. */
function bestFirst(one: Match, other: Match): number {
  return other.score - one.score || countNamed(other) - countNamed(one);
}

/** A bolt is not confused with a spark plug, whatever its thread. */
function isNearMiss(other: Match, best: Match): boolean {
  return kindOf(other) === kindOf(best) && other.dimensions.every(isNearly);
}

function isNearly(dimension: Match["dimensions"][number]): boolean {
  if (dimension.is === "not stated") return true;
  const { misfit, off, expected } = dimension;
  return misfit <= NEAR_MISS && Math.abs(off) <= NEAR_MISS_SHARE * expected.nominal;
}

/** The nearest of each kind, then the others. */
function eachKindFirst(matches: readonly Match[]): readonly Match[] {
  const firsts = new Set([
    ...new Map([...matches].reverse().map((match) => [kindOf(match), match])).values(),
  ]);
  return [...matches.filter((match) => firsts.has(match)), ...matches.filter((match) => !firsts.has(match))];
}

function kindOf({ candidate }: Match): string {
  return candidate.is === "donor" ? "donor" : candidate.family.name;
}

/**
 * Those that fit and state most of what was given, and those that state as much and do not fit. Where none fits, those that
 * state most.
 */
function competitors(
  candidates: readonly Candidate[],
  given: readonly GivenDimension[],
  least: number,
): { readonly fits: readonly Match[]; readonly others: readonly Match[] } {
  const matches = candidates.flatMap((candidate) => {
    const match = couldState(candidate, given, least) ? compareWith(candidate, given) : undefined;
    return match === undefined || countStated(match) < least ? [] : [match];
  });
  const fitting = matches.filter(({ fits }) => fits);
  const level = Math.max(0, ...(fitting.length > 0 ? fitting : matches).map(countStated));
  return {
    fits: fitting.filter((match) => countStated(match) === level),
    others: matches.filter((match) => !match.fits && countStated(match) >= level),
  };
}

/** Whether its family has enough of the given dimensions: most families are ruled out without a comparison. */
function couldState(candidate: Candidate, given: readonly GivenDimension[], least: number): boolean {
  if (candidate.is === "donor") return true;
  const { family } = candidate;
  return given.filter(({ name, is }) => dimensionOfFamily(family, name)?.is === is).length >= least;
}
