/**
 * What a dimension of a found part may differ from its nominal figure: by how it was made, by wear, and by how it was
 * measured. Every figure of the identification by measuring is here.
 *
 * Sources stand with the rows. "Common practice, no source" is what restorers allow for: a figure to sort candidates by,
 * not one to judge a part by.
 */

import type { FamilyName } from "../identification/family.ts";

/** A length as a sum: metres, a share of the nominal dimension, a number of thread pitches. */
export interface Figure {
  readonly fixed?: number;
  readonly share?: number;
  readonly pitches?: number;
}

/** How far a new part may lie below and above its nominal dimension; both figures are positive. */
export interface MadeWithin {
  readonly family: FamilyName;
  readonly dimension: string;
  readonly below: Figure;
  readonly above: Figure;
  readonly source: string;
}

/** Where wear takes a dimension: what is outside shrinks, what is inside grows. Never both ways. */
export interface WornAllowance {
  readonly family: FamilyName;
  readonly dimension: string;
  readonly side: "smaller" | "larger";
  readonly by: Figure;
  readonly source: string;
}

const MILLIMETRE = 0.001;
const none: Figure = {};
const mm = (value: number): Figure => ({ fixed: value * MILLIMETRE });
const share = (value: number): Figure => ({ share: value });
const pitches = (value: number): Figure => ({ pitches: value });

const PRACTICE = "common practice, no source";

/** Threads are not here: their tolerances follow a formula (`thread-limits.ts`); nor are circlips, which go by steps. */
export const madeWithin: readonly MadeWithin[] = [
  made("rolling bearing", "bore", mm(0.02), none, "ISO 492 normal class, largest up to 100 mm, from memory"),
  made(
    "rolling bearing",
    "outside",
    mm(0.03),
    none,
    "ISO 492 normal class, largest up to 250 mm, from memory",
  ),
  made("rolling bearing", "width", mm(0.2), none, "ISO 492 normal class, largest up to 100 mm, from memory"),
  made("roller chain", "pitch", none, share(0.0015), "ISO 606, length of a measured strand, from memory"),
  made("roller chain", "roller", mm(0.15), none, `ISO 606 states the largest; below it ${PRACTICE}`),
  made("roller chain", "width", none, mm(0.25), `ISO 606 states the least; above it ${PRACTICE}`),
  made("key", "width", mm(0.05), mm(0.03), "ISO 286 h9 and ASME B17.2 (+0.001 in), rounded outwards"),
  made("key", "height", mm(0.13), none, "ISO 286 h11 and ASME B17.2 (-0.005 in), rounded outwards"),
  made("key", "diameter", mm(0.25), none, "ASME B17.2 (-0.010 in)"),
  made("wire", "diameter", share(0.01), share(0.01), "ASTM B258 gauges, wire drawn within 1 %, from memory"),
  made("wire", "area", share(0.05), share(0.05), `IEC 60228 sets the resistance, not the area; ${PRACTICE}`),
  made("spark plug", "reach", mm(0.3), mm(0.3), PRACTICE),
  made(
    "spark plug",
    "hexagon",
    mm(0.4),
    mm(0.2),
    "ISO 272 widths across flats, from memory; above it the spanner's name",
  ),
  made("tyre", "width", share(0.04), share(0.04), "ISO 4000-1 section width, 4 %, from memory"),
  made("tyre", "outside", share(0.015), share(0.015), "makes differ by 1 to 2 %; common practice, no source"),
  made("tyre", "rim", mm(1), mm(1), PRACTICE),
];

export const wornAllowances: readonly WornAllowance[] = [
  worn("external thread", "major", "smaller", pitches(0.1), `crests knocked and rusted; ${PRACTICE}`),
  worn("external thread", "effective", "smaller", pitches(0.05), `flanks worn; ${PRACTICE}`),
  worn("external thread", "root", "smaller", pitches(0.05), `rust in the root; ${PRACTICE}`),
  worn("internal thread", "minor", "larger", pitches(0.1), `crests torn; ${PRACTICE}`),
  worn("rolling bearing", "bore", "larger", mm(0.05), `has turned on its shaft; ${PRACTICE}`),
  worn("rolling bearing", "outside", "smaller", mm(0.05), `has turned in its housing; ${PRACTICE}`),
  worn("rolling bearing", "width", "smaller", mm(0.05), `faces rubbed; ${PRACTICE}`),
  worn("O-ring", "section", "smaller", share(0.1), `compression set; ${PRACTICE}`),
  worn("O-ring", "inside", "larger", share(0.02), `stretched or swollen; ${PRACTICE}`),
  worn("O-ring", "outside", "larger", share(0.02), `stretched or swollen; ${PRACTICE}`),
  worn("shaft circlip", "inside", "larger", share(0.03), `opened too far; ${PRACTICE}`),
  worn("shaft circlip", "shaft", "smaller", mm(0.05), `shaft worn; ${PRACTICE}`),
  worn("bore circlip", "outside", "smaller", share(0.03), `closed too far; ${PRACTICE}`),
  worn("bore circlip", "bore", "larger", mm(0.05), `bore worn; ${PRACTICE}`),
  worn(
    "roller chain",
    "pitch",
    "larger",
    share(0.03),
    "limit of elongation of ASME B29.1, through chain makers' pages",
  ),
  worn("roller chain", "roller", "smaller", share(0.03), `rollers worn; ${PRACTICE}`),
  worn("roller chain", "width", "larger", mm(0.15), `inner plates worn; ${PRACTICE}`),
  worn("key", "width", "smaller", mm(0.05), `flanks bruised; ${PRACTICE}`),
  worn("key", "height", "smaller", mm(0.05), `edges bruised; ${PRACTICE}`),
  worn("key", "diameter", "smaller", mm(0.1), `round edge bruised; ${PRACTICE}`),
  worn("spark plug", "major", "smaller", pitches(0.1), `crests burnt and knocked; ${PRACTICE}`),
  worn("spark plug", "hexagon", "smaller", mm(0.2), `corners rounded; ${PRACTICE}`),
  worn("tyre", "outside", "smaller", mm(14), `tread from 8 mm down to 1 mm; ${PRACTICE}`),
];

/** Of a donor, whose drawing nobody has: general tolerances ISO 2768-1 m, from memory, `[up to, ±]` in mm. */
export const generalTolerances: readonly (readonly [upTo: number, within: number])[] = [
  [6, 0.1],
  [30, 0.2],
  [120, 0.3],
  [400, 0.5],
  [1000, 0.8],
  [2000, 1.2],
  [4000, 2],
];

/**
 * What wear may take off a dimension of a donor whose name says that it is outside, or add to one that is inside, m; common
 * practice, no source.
 */
export const wornOfDonor = 0.05 * MILLIMETRE;

/**
 * Free diameter of a circlip, mm: how far a new one may grip tighter and looser than the nominal free diameter, up to that
 * diameter (on a shaft tighter is smaller, in a bore larger). Sources: DIN 471 and DIN 472, the steps up to 17 mm through
 * tables of fastener and circlip makers, those above from memory.
 */
export const circlipFreeWithin: readonly (readonly [upTo: number, tighter: number, looser: number])[] = [
  [5.6, 0.15, 0.04],
  [8.5, 0.18, 0.06],
  [17, 0.36, 0.1],
  [20.5, 0.42, 0.13],
  [26, 0.42, 0.21],
  [38, 0.5, 0.25],
  [46, 0.9, 0.39],
  [78, 1.1, 0.46],
  [110, 1.3, 0.54],
];

/** Thickness of a circlip: as much thinner in mm, up to the thickness; sources as above. */
export const circlipThicknessWithin: readonly (readonly [upTo: number, thinner: number])[] = [
  [0.8, 0.05],
  [1.75, 0.06],
  [2.5, 0.07],
  [4, 0.08],
];

/** Groove of a circlip: as much deeper in mm, for shafts and bores up to the size; DIN 471 and DIN 472, rounded outwards. */
export const circlipGrooveWithin: readonly (readonly [upTo: number, deeper: number])[] = [
  [10, 0.11],
  [22, 0.21],
  [100, 0.3],
];

/** Cross section of an O-ring whose series states no tolerance, ± m; ISO 3601-1, from memory. */
export const singleORingSectionWithin = 0.08 * MILLIMETRE;

/** Inside diameter of an O-ring, ± mm: (0.009 d^0.95 + 0.11), ISO 3601-1 class B, from memory. */
export function oRingInsideWithin(inside: number): number {
  return (0.009 * (inside / MILLIMETRE) ** 0.95 + 0.11) * MILLIMETRE;
}

/** The length that a figure stands for. */
export function lengthOf(figure: Figure, nominal: number, pitch = 0): number {
  return (figure.fixed ?? 0) + (figure.share ?? 0) * nominal + (figure.pitches ?? 0) * pitch;
}

/** The figure of the first step that a value does not go over; that of the last beyond them all. */
export function stepFor<Step extends readonly [upTo: number, ...figures: number[]]>(
  steps: readonly Step[],
  value: number,
): Step {
  return (steps.find(([upTo]) => value <= upTo + 1e-9) ?? steps.at(-1)) as Step;
}

function made(
  family: FamilyName,
  dimension: string,
  below: Figure,
  above: Figure,
  source: string,
): MadeWithin {
  return { family, dimension, below, above, source };
}

function worn(
  family: FamilyName,
  dimension: string,
  side: WornAllowance["side"],
  by: Figure,
  source: string,
): WornAllowance {
  return { family, dimension, side, by, source };
}
