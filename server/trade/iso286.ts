/** Limits and fits of ISO 286: what a tolerance class means at a size. Sizes in mm, deviations in µm. */

import type { Faulty } from "./result.ts";
import type { Deviations } from "./tables/iso286.ts";
import {
  fineRanges,
  holeJ,
  lowerShaftDeviations,
  mainRanges,
  shaftJ,
  standardTolerances,
  upperShaftDeviations,
} from "./tables/iso286.ts";

/** A tolerance class: `H7` of a hole, `h6` of a shaft. */
export interface ToleranceClass {
  readonly feature: "hole" | "shaft";
  /** In lower case for both. */
  readonly letters: string;
  readonly grade: string;
  readonly text: string;
}

/** Deviations from the nominal size, µm; exact, in whole or half micrometres. */
export interface DeviationPair {
  readonly upper: number;
  readonly lower: number;
}

const largestSize = 500;

/** Reads `H7`, `h6`, `JS9`; undefined when it is no tolerance class. */
export function readToleranceClass(text: string): ToleranceClass | undefined {
  const match = /^([A-Za-z]{1,2})(01|0|[1-9]|1[0-8])$/.exec(text);
  const [, letters = "", grade = ""] = match ?? [];
  const lower = letters.toLowerCase();
  const feature = letters === lower ? "shaft" : "hole";
  const isKnown =
    lower === "j" || lower === "js" || lower in upperShaftDeviations || lower in lowerShaftDeviations;
  if (match === null || !isKnown || (feature === "hole" && letters !== letters.toUpperCase()))
    return undefined;
  return { feature, letters: lower, grade, text };
}

/** Standard tolerance of a grade such as `7` at a size in mm, µm. */
export function standardTolerance(size: number, grade: string): number | Faulty {
  const row = standardTolerances[grade];
  if (row === undefined) return notFounded(`IT${grade}`, size, ["IT01", "IT0", "IT1 … IT18"]);
  const place = rangeOf(size, mainRanges);
  return row[place] ?? outOfSize(size);
}

/** Limit deviations of a class at a size in mm. */
export function deviationsOf(size: number, tolerance: ToleranceClass): DeviationPair | Faulty {
  const width = standardTolerance(size, tolerance.grade);
  if (typeof width !== "number") return width;
  if (tolerance.letters === "js") return { upper: width / 2, lower: -width / 2 };
  const fundamental =
    tolerance.feature === "shaft" ? shaftDeviation(size, tolerance) : holeDeviation(size, tolerance, width);
  if (fundamental === undefined) return notFounded(tolerance.text, size, []);
  return "upper" in fundamental
    ? { upper: fundamental.upper, lower: fundamental.upper - width }
    : { upper: fundamental.lower + width, lower: fundamental.lower };
}

type Fundamental = { readonly upper: number } | { readonly lower: number };

function shaftDeviation(size: number, { letters, grade }: ToleranceClass): Fundamental | undefined {
  if (letters === "j") return lowerOf(valueAt(size, shaftJ[grade]));
  const upper = upperShaftDeviations[letters];
  // The standard gives a and b no meaning up to 1 mm.
  if (upper !== undefined)
    return size <= 1 && "ab".includes(letters) ? undefined : upperOf(valueAt(size, upper));
  if (letters === "k" && !isBetween(grade, 4, 7)) return { lower: 0 };
  return lowerOf(valueAt(size, lowerShaftDeviations[letters]));
}

/** Holes mirror the shafts; J to ZC in the finer grades are raised by Δ = IT(n) − IT(n−1), above 3 mm. */
function holeDeviation(size: number, tolerance: ToleranceClass, width: number): Fundamental | undefined {
  const { letters, grade } = tolerance;
  if (letters === "j") return upperOf(valueAt(size, holeJ[grade]));
  if (letters in upperShaftDeviations) {
    const mirrored = shaftDeviation(size, tolerance);
    return mirrored !== undefined && "upper" in mirrored ? { lower: 0 - mirrored.upper } : undefined;
  }
  const transition = "kmn".includes(letters);
  const isFine = grade === "01" || Number(grade) <= (transition ? 8 : 7);
  if (!isFine) return coarseHoleDeviation(size, letters);
  const mirrored = valueAt(size, lowerShaftDeviations[letters]);
  // The standard tabulates Δ from IT3 on.
  if (mirrored === undefined || (size > 3 && !isBetween(grade, 3, 8))) return undefined;
  // A single value that the standard sets apart from its own rule.
  if (letters === "m" && grade === "6" && size > 250 && size <= 315) return { upper: -9 };
  const finer = standardTolerance(size, `${Number(grade) - 1}`);
  const raised = size <= 3 || typeof finer !== "number" ? 0 : width - finer;
  return { upper: raised - mirrored };
}

function coarseHoleDeviation(size: number, letters: string): Fundamental | undefined {
  if (letters === "k") return size <= 3 ? { upper: 0 } : undefined;
  if (letters === "n" && size <= 1) return undefined;
  if (letters === "n" && size > 3) return { upper: 0 };
  const mirrored = valueAt(size, lowerShaftDeviations[letters]);
  return mirrored === undefined ? undefined : { upper: 0 - mirrored };
}

function isBetween(grade: string, least: number, most: number): boolean {
  return grade !== "01" && Number(grade) >= least && Number(grade) <= most;
}

function upperOf(value: number | undefined): Fundamental | undefined {
  return value === undefined ? undefined : { upper: value };
}

function lowerOf(value: number | undefined): Fundamental | undefined {
  return value === undefined ? undefined : { lower: value };
}

function valueAt(size: number, row: Deviations | undefined): number | undefined {
  if (row === undefined) return undefined;
  return row[rangeOf(size, row.length === fineRanges.length ? fineRanges : mainRanges)];
}

/** Place of the range that holds a size; −1 when none does. */
function rangeOf(size: number, ranges: readonly number[]): number {
  return size > 0 ? ranges.findIndex((upTo) => size <= upTo) : -1;
}

function outOfSize(size: number): Faulty {
  const metres = 0.001;
  return {
    fault: {
      kind: "out-of-range",
      parameter: "size",
      value: size * metres,
      min: 0,
      max: largestSize * metres,
      unit: "mm",
    },
  };
}

function notFounded(wanted: string, size: number, known: readonly string[]): Faulty {
  return { fault: { kind: "not-in-table", wanted: `${wanted} at ${size} mm`, table: "ISO 286-1", known } };
}
