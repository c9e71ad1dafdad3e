/** Geometry of screw threads: the diameters that follow from nominal diameter and pitch. */

import type { Computed } from "./result.ts";
import type { Thread, ThreadSeries } from "./thread.ts";

/** What a thread form takes off the nominal diameter, as factors of the pitch. */
interface ThreadForm {
  readonly toPitchDiameter: number;
  /** Basic minor diameter of the internal thread, D1. */
  readonly toMinorDiameter: number;
  /** Root of the external thread, d3. */
  readonly toRootDiameter: number;
  /** Diameter of the stress area. */
  readonly toStressDiameter: number;
  /** Twice the full depth, to which a percentage of thread refers. */
  readonly fullDepths: number;
}

// Heights of the fundamental triangle H = (√3/2)·P: ISO 68-1 puts d2 at 3/8 H, D1 at 5/8 H, d3 at 17/24 H.
const H = Math.sqrt(3) / 2;

const iso: ThreadForm = {
  toPitchDiameter: (3 / 4) * H,
  toMinorDiameter: (5 / 4) * H,
  toRootDiameter: (17 / 12) * H,
  toStressDiameter: ((3 / 4) * H + (17 / 12) * H) / 2,
  fullDepths: 1.5 * H,
};

/** Forms whose internal and external threads share one depth; the stress area is at the mean of d2 and d3. */
function fullForm(depth: number): ThreadForm {
  return {
    toPitchDiameter: depth,
    toMinorDiameter: 2 * depth,
    toRootDiameter: 2 * depth,
    toStressDiameter: 1.5 * depth,
    fullDepths: 2 * depth,
  };
}

const unified: ThreadForm = { ...iso, toStressDiameter: 0.9743 };
const whitworth = fullForm(0.640327);

const forms: Readonly<Record<ThreadSeries, ThreadForm>> = {
  M: iso,
  UNC: unified,
  UNF: unified,
  UNEF: unified,
  BSW: whitworth,
  BSF: whitworth,
  BSP: whitworth,
  BA: fullForm(0.6),
  BSC: fullForm(0.5327),
};

/** Pitch (effective) diameter, m. */
export function pitchDiameter(thread: Thread): number {
  return thread.majorDiameter - forms[thread.series].toPitchDiameter * thread.pitch;
}

/** Basic minor diameter of the internal thread (D1), m. */
export function minorDiameter(thread: Thread): number {
  return thread.majorDiameter - forms[thread.series].toMinorDiameter * thread.pitch;
}

/** Diameter at the root of the external thread (d3), m. */
export function rootDiameter(thread: Thread): number {
  return thread.majorDiameter - forms[thread.series].toRootDiameter * thread.pitch;
}

/** Area that carries the load, m². */
export function stressArea(thread: Thread): number {
  const diameter = thread.majorDiameter - forms[thread.series].toStressDiameter * thread.pitch;
  return (Math.PI / 4) * diameter ** 2;
}

/** Hole to drill before tapping, m; `share` is the depth of thread wanted, as a fraction of full depth. */
export function tapDrill(thread: Thread, share: number): number {
  return thread.majorDiameter - share * forms[thread.series].fullDepths * thread.pitch;
}

/** Whether lengths of this thread are customarily given in inches. */
export function isInchThread(thread: Thread): boolean {
  return thread.threadsPerInch !== undefined && thread.series !== "BSP";
}

/** A length or an area in the unit that goes with the thread. */
export function inUnitsOf(thread: Thread, dimension: "length" | "area", value: number): Computed<number> {
  if (!isInchThread(thread)) return { value };
  return { value, unit: dimension === "length" ? "in" : "in2" };
}
