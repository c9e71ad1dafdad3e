/** What an unknown part is compared with: a standard part or a donor, with what each of its dimensions may measure. */

import { generalTolerances, stepFor, wornOfDonor } from "../tables/identification-figures.ts";
import type { Family, FamilyDimension } from "./family.ts";
import { dimensionOfFamily, families, isPerInch, plainName } from "./family.ts";

/** A dimension as it should be, SI units. */
export interface Expected {
  readonly nominal: number;
  /** What a new part may measure. */
  readonly lower: number;
  readonly upper: number;
  /** How much further wear may take it, and which way. */
  readonly worn?: { readonly side: "smaller" | "larger"; readonly by: number };
}

/** The least that a part may measure, worn ones included. */
export function leastOf({ lower, worn }: Expected): number {
  return worn?.side === "smaller" ? lower - worn.by : lower;
}

/** The most that a part may measure, worn ones included. */
export function mostOf({ upper, worn }: Expected): number {
  return worn?.side === "larger" ? upper + worn.by : upper;
}

export interface StandardCandidate {
  readonly is: "standard";
  readonly family: Family;
  /** Its designation. */
  readonly name: string;
  readonly source: string;
  readonly remark?: string;
  readonly dimensions: ReadonlyMap<string, Expected>;
}

/** A known part of the build's own. */
export interface DonorCandidate {
  readonly is: "donor";
  /** The name of its block. */
  readonly donor: string;
  readonly name: string;
  readonly source: string;
  readonly remark?: string;
  readonly dimensions: ReadonlyMap<string, Expected>;
  /** The kind of quantity of each dimension. */
  readonly kinds: ReadonlyMap<string, string>;
}

export type Candidate = StandardCandidate | DonorCandidate;

/** Where a candidate states a given dimension: under which name, and how that is measured if a table says so. */
export interface Stated {
  readonly name: string;
  readonly expected: Expected;
  readonly dimension: FamilyDimension | undefined;
}

/** What is asked of a candidate: a dimension by the name its author used. */
interface Asked {
  readonly name: string;
  /** `length`, `angle`, `area`; of donors any kind of quantity. */
  readonly is: string;
}

/** The dimension of a candidate that a name means; undefined where it states none, or one of another kind. */
export function statedBy(candidate: Candidate, { name, is }: Asked): Stated | undefined {
  if (candidate.is === "donor") return statedByDonor(candidate, name, is);
  const dimension = dimensionOfFamily(candidate.family, name);
  if (dimension === undefined || dimension.is !== is) return undefined;
  const expected = candidate.dimensions.get(dimension.name);
  return expected && { name: dimension.name, expected, dimension };
}

function statedByDonor({ dimensions, kinds }: DonorCandidate, name: string, is: string): Stated | undefined {
  const own = [...dimensions.keys()].find((key) => key === name) ?? alike(dimensions.keys(), name);
  const expected = own === undefined ? undefined : dimensions.get(own);
  if (own === undefined || expected === undefined || kinds.get(own) !== is) return undefined;
  return { name: own, expected, dimension: undefined };
}

/** Among the names of a donor's dimensions, one that means the same in some family. */
function alike(names: Iterable<string>, name: string): string | undefined {
  return [...names].find(
    (own) =>
      plainName(own) === plainName(name) ||
      families.some((family) => {
        const meant = dimensionOfFamily(family, name);
        return meant !== undefined && meant === dimensionOfFamily(family, own);
      }),
  );
}

/** A size of a donor: its name, its value in SI units, and the kind of quantity it is. */
export interface DonorSize {
  readonly name: string;
  readonly value: number;
  readonly is: string;
}

/** A donor as a candidate. Lengths are given general tolerances, since nobody has its drawing; other sizes none. */
export function donorCandidate(
  donor: string,
  title: string,
  sizes: readonly DonorSize[],
  number?: string,
): DonorCandidate {
  return {
    is: "donor",
    donor,
    name: title,
    source: `donor ${donor}`,
    ...(number === undefined ? {} : { remark: `number ${number}` }),
    dimensions: new Map(sizes.map((size) => [size.name, expectedOfDonor(size)])),
    kinds: new Map(sizes.map(({ name, is }) => [name, is])),
  };
}

const MILLIMETRE = 0.001;

function expectedOfDonor({ name, value, is }: DonorSize): Expected {
  if (is !== "length" || isPerInch(name)) return { nominal: value, lower: value, upper: value };
  const within = stepFor(generalTolerances, value / MILLIMETRE)[1] * MILLIMETRE;
  const side = sideOfWear(name);
  return {
    nominal: value,
    lower: value - within,
    upper: value + within,
    ...(side === undefined ? {} : { worn: { side, by: wornOfDonor } }),
  };
}

/** Which way wear takes a dimension, by what its name says in the tables: a bore grows, an outside shrinks. */
function sideOfWear(name: string): "smaller" | "larger" | undefined {
  const plain = plainName(name);
  if (/^(?:bore|hole|inside|inner|id)(?:_|$)/.test(plain)) return "larger";
  if (/^(?:outside|outer|od|shaft|spindle|pin|thickness)(?:_|$)/.test(plain)) return "smaller";
  return undefined;
}
