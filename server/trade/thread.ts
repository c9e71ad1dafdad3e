/** Screw threads: their names, read and written, and what a name means. */

import type { InchThreadRow } from "./tables/inch-threads.ts";
import {
  britishCycle,
  britishFine,
  britishPipe,
  unifiedCoarse,
  unifiedExtraFine,
  unifiedFine,
  whitworth,
} from "./tables/inch-threads.ts";
import { metricPitches, metricThreadRows } from "./tables/metric-threads.ts";

export type ThreadSeries = "M" | "UNC" | "UNF" | "UNEF" | "BSW" | "BSF" | "BA" | "BSC" | "BSP";

export interface Thread {
  readonly kind: "thread";
  readonly series: ThreadSeries;
  /** The canonical name, as in `M10x1.25` or `3/8-24 UNF LH`. */
  readonly designation: string;
  /** Nominal (basic major) diameter, m. */
  readonly majorDiameter: number;
  /** m */
  readonly pitch: number;
  /** Of inch threads. */
  readonly threadsPerInch?: number;
  readonly hand: "right" | "left";
  /** Angle between the flanks, rad. */
  readonly flankAngle: number;
  /** The standard of the series; absent for a metric diameter that ISO 261 does not list. */
  readonly standard?: string;
}

/** A thread with a length under the head behind it; length in m. */
export interface BoltSize {
  readonly thread: Thread;
  readonly length?: number;
}

export interface ThreadFault {
  readonly fault:
    | { readonly kind: "unreadable"; readonly text: string; readonly expected: string }
    | {
        readonly kind: "not-in-table";
        readonly wanted: string;
        readonly table: string;
        readonly known: readonly string[];
      };
}

const INCH = 0.0254;
const MILLIMETRE = 0.001;
const degrees = (value: number) => (value * Math.PI) / 180;

const expectedThread = "a thread such as M10x1.25, 3/8-24 UNF, 3/8 BSF or 2 BA";
const expectedBolt = "a thread and a length such as M10x1.25x45 or 3/8-24 UNF x 1-1/4 in";

/** Reads a thread as it is written in the trade: `M10`, `M10x1.25`, `3/8-24 UNF`, `2 BA`, each with ` LH` or without. */
export function readThread(text: string): Thread | ThreadFault {
  const { rest, hand } = takeHand(tidy(text));
  const metric = /^M ?(\d+(?:\.\d+)?)(?: ?[x×] ?(\d+(?:\.\d+)?))?$/.exec(rest);
  if (metric !== null) return metricThread(Number(metric[1]), numberOrAbsent(metric[2]), hand);
  const british = /^(\d{1,2}) ?BA$/.exec(rest);
  if (british !== null) return britishAssociation(Number(british[1]), hand);
  const inch = /^(#?\d+|\d+\/\d+|\d+[- ]\d+\/\d+)(?:-(\d+(?:\.\d+)?))? ?(UNC|UNF|UNEF|BSW|BSF|BSC|BSP)$/.exec(
    rest,
  );
  if (inch !== null) {
    return inchThread(inch[1] ?? "", numberOrAbsent(inch[2]), inch[3] as InchSeries, hand);
  }
  return { fault: { kind: "unreadable", text, expected: expectedThread } };
}

/**
 * Reads a thread with a length behind it. A single figure behind a metric diameter is the length when it is no
 * ISO 261 pitch of that diameter: `M8x30` is a coarse M8, 30 mm long. `LH` may stand behind the thread or the whole.
 */
export function readBolt(text: string): BoltSize | ThreadFault {
  const { rest, hand } = takeHand(tidy(text));
  const metric =
    /^M ?(\d+(?:\.\d+)?)(?: ?[x×] ?(\d+(?:\.\d+)?))?(?: ?(LH))?(?: ?[x×] ?(\d+(?:\.\d+)?))?(?: ?mm)?$/.exec(
      rest,
    );
  if (metric !== null) {
    const [, diameter, first, middleHand, second] = metric;
    return metricBolt(
      Number(diameter),
      numberOrAbsent(first),
      numberOrAbsent(second),
      middleHand === undefined ? hand : "left",
    );
  }
  const parted = /^(.+?) ?[x×] ?([-\d/. ]+) ?(in|mm)$/.exec(rest);
  const thread = readThread(`${parted?.[1] ?? rest}${hand === "left" ? " LH" : ""}`);
  if ("fault" in thread) {
    return thread.fault.kind === "unreadable"
      ? { fault: { kind: "unreadable", text, expected: expectedBolt } }
      : thread;
  }
  if (parted === null) return { thread };
  const length = readFraction(parted[2] ?? "");
  if (length === undefined || length <= 0)
    return { fault: { kind: "unreadable", text, expected: expectedBolt } };
  return { thread, length: length * (parted[3] === "in" ? INCH : MILLIMETRE) };
}

/** The canonical name of a thread with its length: `M10x1.25x45`, `M8x30`, `3/8-24 UNF x 1-1/4 in`. */
export function printBolt({ thread, length }: BoltSize): string {
  if (length === undefined) return thread.designation;
  if (thread.series === "M") {
    const left = thread.hand === "left" ? " LH" : "";
    return `${thread.designation.replace(/ LH$/, "")}x${plain(length / MILLIMETRE)}${left}`;
  }
  const inches = printFraction(length / INCH);
  return `${thread.designation} x ${inches === undefined ? `${plain(length / MILLIMETRE)} mm` : `${inches} in`}`;
}

/** Whether two threads screw together: the same series or form, diameter, pitch and hand. */
export function sameThread(a: Thread, b: Thread): boolean {
  const close = (x: number, y: number) => Math.abs(x - y) <= 1e-9;
  return (
    a.hand === b.hand &&
    close(a.flankAngle, b.flankAngle) &&
    close(a.majorDiameter, b.majorDiameter) &&
    close(a.pitch, b.pitch)
  );
}

/** Pitches of ISO 261 for a metric diameter in mm, coarse first; empty when the diameter is not listed. */
function standardPitches(diameter: number): readonly number[] {
  const row = metricThreadRows.find((candidate) => candidate.diameter === diameter);
  if (row === undefined) return [];
  return row.coarse === undefined ? row.fine : [row.coarse, ...row.fine];
}

/** Coarse pitch of ISO 261 in mm; undefined where there is none. */
export function coarsePitch(diameter: number): number | undefined {
  return metricThreadRows.find((candidate) => candidate.diameter === diameter)?.coarse;
}

/** Fine pitches in mm that ISO 262 selects for screws, bolts and nuts. */
export function selectedFinePitches(diameter: number): readonly number[] {
  return metricThreadRows.find((candidate) => candidate.diameter === diameter)?.selected ?? [];
}

/**
 * British Association thread by its formula (BS 93), in m: pitch 0.9ᵏ mm, diameter 6 p^1.2 mm. BS 93 prints both
 * rounded to two figures, which is what a thread of this series has.
 */
export function britishAssociationFormula(number: number): { pitch: number; majorDiameter: number } {
  const pitch = 0.9 ** number;
  return { pitch: pitch * MILLIMETRE, majorDiameter: 6 * pitch ** 1.2 * MILLIMETRE };
}

/** Every inch thread of a series as it is named, for lists and identification. */
export function threadsOfSeries(series: ThreadSeries): readonly Thread[] {
  if (series === "M") {
    return metricThreadRows.flatMap(({ diameter }) =>
      standardPitches(diameter).flatMap((pitch) => readable(metricThread(diameter, pitch, "right"))),
    );
  }
  if (series === "BA") {
    return Array.from({ length: 17 }, (_, number) => readable(britishAssociation(number, "right"))).flat();
  }
  return inchRows(series).flatMap(([size, threadsPerInch]) =>
    readable(inchThread(size, threadsPerInch, series, "right")),
  );
}

type InchSeries = Exclude<ThreadSeries, "M" | "BA">;
type Hand = Thread["hand"];

function readable(thread: Thread | ThreadFault): Thread[] {
  return "fault" in thread ? [] : [thread];
}

function metricThread(diameter: number, pitch: number | undefined, hand: Hand): Thread | ThreadFault {
  const listed = standardPitches(diameter);
  const chosen = pitch ?? coarsePitch(diameter);
  const wanted = `M${plain(diameter)}${pitch === undefined ? "" : `x${plain(pitch)}`}`;
  const known =
    listed.length > 0 ? listed : metricPitches.filter((candidate) => isThinEnough(candidate, diameter));
  if (chosen === undefined || !isPossible(chosen, diameter)) {
    return {
      fault: {
        kind: "not-in-table",
        wanted,
        table: "ISO 261",
        known: known.map((candidate) => `M${plain(diameter)}x${plain(candidate)}`),
      },
    };
  }
  const coarse = chosen === coarsePitch(diameter);
  return {
    kind: "thread",
    series: "M",
    designation: `M${plain(diameter)}${coarse ? "" : `x${plain(chosen)}`}${suffix(hand)}`,
    majorDiameter: diameter * MILLIMETRE,
    pitch: chosen * MILLIMETRE,
    hand,
    flankAngle: degrees(60),
    ...(listed.includes(chosen) ? { standard: "ISO 261" } : {}),
  };
}

/**
 * A pitch that ISO 261 lists for the diameter; or, for special threads, one of the metric pitches: finer than the
 * coarse one where the diameter has one, and at most a quarter of the diameter.
 */
function isPossible(pitch: number, diameter: number): boolean {
  if (standardPitches(diameter).includes(pitch)) return true;
  const coarse = coarsePitch(diameter) ?? Number.POSITIVE_INFINITY;
  return metricPitches.includes(pitch) && pitch < coarse && isThinEnough(pitch, diameter);
}

function isThinEnough(pitch: number, diameter: number): boolean {
  return diameter <= 300 && pitch <= diameter / 4 && pitch >= diameter / 200;
}

function metricBolt(
  diameter: number,
  first: number | undefined,
  second: number | undefined,
  hand: Hand,
): BoltSize | ThreadFault {
  const single = first !== undefined && second === undefined;
  const isLength = single && !standardPitches(diameter).includes(first);
  const thread = metricThread(diameter, isLength ? undefined : first, hand);
  if ("fault" in thread) return thread;
  const length = isLength ? first : second;
  if (length === undefined) return { thread };
  return length > 0
    ? { thread, length: length * MILLIMETRE }
    : { fault: { kind: "unreadable", text: `M${plain(diameter)}x${length}`, expected: expectedBolt } };
}

function britishAssociation(number: number, hand: Hand): Thread | ThreadFault {
  if (number > 16) {
    return {
      fault: { kind: "not-in-table", wanted: `${number} BA`, table: "BS 93", known: ["0 BA", "16 BA"] },
    };
  }
  const { pitch, majorDiameter } = britishAssociationFormula(number);
  return {
    kind: "thread",
    series: "BA",
    designation: `${number} BA${suffix(hand)}`,
    majorDiameter: twoFigures(majorDiameter / MILLIMETRE) * MILLIMETRE,
    pitch: twoFigures(pitch / MILLIMETRE) * MILLIMETRE,
    hand,
    flankAngle: degrees(47.5),
    standard: "BS 93",
  };
}

interface SeriesOfInchThreads {
  readonly rows: readonly InchThreadRow[];
  readonly standard: string;
  readonly flankAngle: number;
  /** Whether the name tells the threads per inch. */
  readonly namesThreads: boolean;
}

const inchSeries: Readonly<Record<InchSeries, SeriesOfInchThreads>> = {
  UNC: { rows: unifiedCoarse, standard: "ASME B1.1", flankAngle: degrees(60), namesThreads: true },
  UNF: { rows: unifiedFine, standard: "ASME B1.1", flankAngle: degrees(60), namesThreads: true },
  UNEF: { rows: unifiedExtraFine, standard: "ASME B1.1", flankAngle: degrees(60), namesThreads: true },
  BSW: { rows: whitworth, standard: "BS 84", flankAngle: degrees(55), namesThreads: false },
  BSF: { rows: britishFine, standard: "BS 84", flankAngle: degrees(55), namesThreads: false },
  BSC: { rows: britishCycle, standard: "BS 811", flankAngle: degrees(60), namesThreads: true },
  BSP: {
    rows: britishPipe.map(([size, threads]) => [size, threads] as const),
    standard: "ISO 228-1",
    flankAngle: degrees(55),
    namesThreads: false,
  },
};

function inchRows(series: InchSeries): readonly InchThreadRow[] {
  return inchSeries[series].rows;
}

function inchThread(
  written: string,
  threadsPerInch: number | undefined,
  series: InchSeries,
  hand: Hand,
): Thread | ThreadFault {
  const { rows, standard, flankAngle, namesThreads } = inchSeries[series];
  const size = written.replace(" ", "-");
  const sizes = /^\d+$/.test(size) ? [size, `#${size}`] : [size];
  const row = rows.find(
    ([name, threads]) => sizes.includes(name) && (threadsPerInch === undefined || threads === threadsPerInch),
  );
  if (row === undefined) {
    const ofThatSize = rows.filter(([name]) => sizes.includes(name));
    return {
      fault: {
        kind: "not-in-table",
        wanted: `${written}${threadsPerInch === undefined ? "" : `-${threadsPerInch}`} ${series}`,
        table: standard,
        known: (ofThatSize.length > 0 ? ofThatSize : rows).map(([name, threads]) =>
          namesThreads ? `${name}-${threads} ${series}` : `${name} ${series}`,
        ),
      },
    };
  }
  const [name, threads] = row;
  return {
    kind: "thread",
    series,
    designation: `${name}${namesThreads ? `-${threads}` : ""} ${series}${suffix(hand)}`,
    majorDiameter: majorDiameterOf(name, series),
    pitch: INCH / threads,
    threadsPerInch: threads,
    hand,
    flankAngle,
    standard,
  };
}

function majorDiameterOf(size: string, series: InchSeries): number {
  if (series === "BSP") {
    const row = britishPipe.find(([name]) => name === size);
    return (row?.[2] ?? Number.NaN) * MILLIMETRE;
  }
  // Numbered sizes of ASME B1.1: 0.060 in and 0.013 in for each number.
  if (size.startsWith("#")) return (0.06 + 0.013 * Number(size.slice(1))) * INCH;
  return (readFraction(size) ?? Number.NaN) * INCH;
}

/** `3/8`, `1-3/8`, `1 3/8`, `1.25` or `2` as a number; undefined when it is none of them. */
function readFraction(text: string): number | undefined {
  const match = /^(?:(\d+)[- ])?(\d+)\/(\d+)$|^(\d+(?:\.\d+)?)$/.exec(text.trim());
  if (match === null) return undefined;
  const [, whole, above, below, decimal] = match;
  if (decimal !== undefined) return Number(decimal);
  const value = Number(whole ?? 0) + Number(above) / Number(below);
  return Number.isFinite(value) ? value : undefined;
}

/** Sixty-fourths of an inch as a workshop writes them; undefined when it is no such fraction. */
function printFraction(inches: number): string | undefined {
  const parts = Math.round(inches * 64);
  if (Math.abs(parts / 64 - inches) > 1e-6) return undefined;
  const whole = Math.floor(parts / 64);
  let above = parts % 64;
  let below = 64;
  while (above > 0 && above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  if (above === 0) return `${whole}`;
  return whole === 0 ? `${above}/${below}` : `${whole}-${above}/${below}`;
}

function takeHand(text: string): { rest: string; hand: Hand } {
  const rest = text.replace(/ ?LH$/, "");
  return { rest, hand: rest === text ? "right" : "left" };
}

function tidy(text: string): string {
  return text.trim().replace(/\s+/g, " ");
}

function suffix(hand: Hand): string {
  return hand === "left" ? " LH" : "";
}

function numberOrAbsent(text: string | undefined): number | undefined {
  return text === undefined ? undefined : Number(text);
}

function twoFigures(value: number): number {
  return Number(value.toPrecision(2));
}

function plain(value: number): string {
  return `${Number(value.toPrecision(9))}`;
}
