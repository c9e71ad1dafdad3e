/** Which measurement tells the best candidate from the others. */

import type { Candidate, Expected } from "./candidate.ts";
import { leastOf, mostOf } from "./candidate.ts";
import type { Measuring } from "./family.ts";
import type { Match } from "./match.ts";

/** What a candidate's dimension should be, SI units. */
export interface NominalValue {
  readonly candidate: Candidate;
  readonly value: number;
}

/** A dimension in which candidates differ. */
export interface DimensionDifference {
  readonly name: string;
  /** `length`, `angle`, `area` … */
  readonly is: string;
  /** In the order of the candidates. */
  readonly values: readonly NominalValue[];
}

/** The best candidate and those that one measurement tells it from. */
export interface Difference {
  /** The best first. */
  readonly between: readonly Candidate[];
  /** Every dimension in which two differ; of more than two, the one that tells them apart. */
  readonly differ: readonly DimensionDifference[];
  /** The measurement that does; undefined where no dimension of the tables differs. */
  readonly by: { readonly dimension: DimensionDifference; readonly measuring: Measuring } | undefined;
  /** The other does not fit, but it is near enough to be confused with the best. */
  readonly nearMiss: boolean;
}

const MOST_FITTING = 6;

/** @param fitting best first; @param nearest what does not fit but is near */
export function tellApart(fitting: readonly Match[], nearest: readonly Match[]): readonly Difference[] {
  const [best, ...others] = fitting.slice(0, MOST_FITTING).map(({ candidate }) => candidate);
  if (best === undefined) return [];
  return [
    ...grouped(best, others),
    ...nearest.map(({ candidate }) =>
      differenceOf(best, [candidate], tellingDimension(best, candidate), true),
    ),
  ];
}

/** Candidates that the same measurement tells from the best stand together. */
function grouped(best: Candidate, others: readonly Candidate[]): readonly Difference[] {
  const groups = new Map<string, { readonly telling: Telling | undefined; readonly members: Candidate[] }>();
  for (const other of others) {
    const telling = tellingDimension(best, other);
    const key = telling?.name ?? "";
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { telling, members: [other] });
    else group.members.push(other);
  }
  return [...groups.values()].map(({ telling, members }) => differenceOf(best, members, telling, false));
}

interface Telling {
  readonly name: string;
  readonly measuring: Measuring;
}

function differenceOf(
  best: Candidate,
  others: readonly Candidate[],
  telling: Telling | undefined,
  nearMiss: boolean,
): Difference {
  const between = [best, ...others];
  const [other] = others;
  const names =
    others.length === 1 && other !== undefined
      ? differing(best, other)
      : telling === undefined
        ? []
        : [telling.name];
  const by = telling && { dimension: valuesOf(telling.name, between), measuring: telling.measuring };
  return { between, differ: names.map((name) => valuesOf(name, between)), by, nearMiss };
}

function valuesOf(name: string, between: readonly Candidate[]): DimensionDifference {
  const values = between.flatMap((candidate) => {
    const expected = candidate.dimensions.get(name);
    return expected === undefined ? [] : [{ candidate, value: expected.nominal }];
  });
  const [first] = between;
  return { name, is: first === undefined ? "length" : kindOf(first, name), values };
}

/** The dimensions that both state and that are not the same. */
function differing(one: Candidate, other: Candidate): readonly string[] {
  return [...one.dimensions].flatMap(([name, expected]) => {
    const there = other.dimensions.get(name);
    return there !== undefined && isApart(expected, there) && kindOf(one, name) === kindOf(other, name)
      ? [name]
      : [];
  });
}

function isApart(one: Expected, other: Expected): boolean {
  return Math.abs(one.nominal - other.nominal) > 1e-6 * Math.abs(one.nominal);
}

/**
 * The dimension to measure. It is beyond doubt where the limits of both, wear included, lie further apart than three times
 * the uncertainty with which it can be measured: of such the one to be asked for first. Where there is none, the one that
 * lies furthest apart for its uncertainty; where all overlap, that whose nominal figures do.
 */
function tellingDimension(one: Candidate, other: Candidate): Telling | undefined {
  const tellings = differing(one, other).flatMap((name) => {
    const [a, b] = [one.dimensions.get(name), other.dimensions.get(name)];
    if (a === undefined || b === undefined) return [];
    const measuring = measuringOf(one, name, a.nominal);
    const apart = (gapBetween(a, b) + Math.abs(a.nominal - b.nominal) / 1000) / measuring.uncertainty;
    return [
      { name, measuring, apart, turn: apart >= BEYOND_DOUBT ? measuring.turn : Number.POSITIVE_INFINITY },
    ];
  });
  return tellings.sort((a, b) => (a.turn === b.turn ? b.apart - a.apart : a.turn - b.turn))[0];
}

const BEYOND_DOUBT = 3;

function gapBetween(one: Expected, other: Expected): number {
  return Math.max(0, leastOf(one) - mostOf(other), leastOf(other) - mostOf(one));
}

function kindOf(candidate: Candidate, name: string): string {
  if (candidate.is === "donor") return candidate.kinds.get(name) ?? "length";
  return candidate.family.dimensions.find((dimension) => dimension.name === name)?.is ?? "length";
}

function measuringOf(candidate: Candidate, name: string, nominal: number): Measuring {
  const known =
    candidate.is === "standard"
      ? candidate.family.dimensions.find((dimension) => dimension.name === name)?.measuring
      : undefined;
  return known ?? { turn: 2, how: `measure ${name.replaceAll("_", " ")}`, uncertainty: 0.001 * nominal };
}
