/**
 * What a new thread of any series may measure. Source: the formulas of ISO 965-1 for tolerance grade 6 and position g
 * (from memory; they agree with its tables to the rounding, and with classes 2A and 2B of ASME B1.1 to half a thou at the
 * crests of bolts, a thou at their flanks, three thou in nuts). They are used for every series: British classes lie near
 * them, and what is found is worn besides. The upper limit is that of position h, so that unplated and old threads fit too.
 */

import type { Limits } from "../result.ts";
import type { Thread } from "../thread.ts";
import { minorDiameter, pitchDiameter, rootDiameter } from "../threads.ts";

const MILLIMETRE = 0.001;
const MICROMETRE = 1e-6;

export interface ExternalLimits {
  readonly major: Limits;
  readonly effective: Limits;
  readonly root: Limits;
}

/** Limits of size of a new bolt, m. */
export function externalLimits(thread: Thread): ExternalLimits {
  const { majorDiameter } = thread;
  const effective = pitchDiameter(thread);
  const root = rootDiameter(thread);
  const deviation = fundamentalDeviation(thread);
  const flanks = pitchDiameterTolerance(thread);
  return {
    major: { lower: majorDiameter - deviation - majorDiameterTolerance(thread), upper: majorDiameter },
    effective: { lower: effective - deviation - flanks, upper: effective },
    root: { lower: root - deviation - flanks, upper: Math.max(root, minorDiameter(thread)) },
  };
}

/** Limits of the hole of a new nut, m. */
export function internalLimits(thread: Thread): Limits {
  const lower = minorDiameter(thread);
  return { lower, upper: lower + minorDiameterTolerance(thread) };
}

/** es of position g, without its sign: 15 + 11 P, µm with P in mm. */
function fundamentalDeviation({ pitch }: Thread): number {
  return (15 + (11 * pitch) / MILLIMETRE) * MICROMETRE;
}

/** Td(6) = 180 P^(2/3) - 3.15 P^(-1/2), µm with P in mm. */
function majorDiameterTolerance({ pitch }: Thread): number {
  const P = pitch / MILLIMETRE;
  return (180 * P ** (2 / 3) - 3.15 / Math.sqrt(P)) * MICROMETRE;
}

/** Td2(6) = 90 P^0.4 d^0.1, µm with P and d in mm. */
function pitchDiameterTolerance({ pitch, majorDiameter }: Thread): number {
  return 90 * (pitch / MILLIMETRE) ** 0.4 * (majorDiameter / MILLIMETRE) ** 0.1 * MICROMETRE;
}

/** TD1(6) = 433 P - 190 P^1.22 up to 0.8 mm, 230 P^0.7 above, µm with P in mm. */
function minorDiameterTolerance({ pitch }: Thread): number {
  const P = pitch / MILLIMETRE;
  return (P <= 0.8 ? 433 * P - 190 * P ** 1.22 : 230 * P ** 0.7) * MICROMETRE;
}
