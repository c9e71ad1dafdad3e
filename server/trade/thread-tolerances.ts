/** How much a made thread may differ from its basic diameters. */

import type { Limits } from "./result.ts";
import { crestTolerances, pitchDiameterTolerances } from "./tables/metric-thread-tolerances.ts";
import type { Thread } from "./thread.ts";
import { pitchDiameter } from "./threads.ts";

const MICROMETRE = 1e-6;

export interface ExternalThreadLimits {
  /** m */
  readonly majorDiameter: Limits;
  readonly pitchDiameter: Limits;
}

/** Limits of size of an external metric thread, class 6g (ISO 965-1); undefined outside its table. */
export function externalThreadLimits(thread: Thread): ExternalThreadLimits | undefined {
  if (thread.series !== "M") return undefined;
  const pitch = Number((thread.pitch * 1000).toFixed(6));
  const diameter = thread.majorDiameter * 1000;
  const crest = crestTolerances.find((row) => row.pitch === pitch);
  const range = pitchDiameterTolerances.find(({ over, upTo }) => diameter > over && diameter <= upTo);
  const flank = range?.byPitch.get(pitch);
  if (crest === undefined || flank === undefined) return undefined;
  const below = (basic: number, tolerance: number): Limits => {
    const upper = basic + crest.deviation * MICROMETRE;
    return { lower: upper - tolerance * MICROMETRE, upper };
  };
  return {
    majorDiameter: below(thread.majorDiameter, crest.majorDiameter),
    pitchDiameter: below(pitchDiameter(thread), flank),
  };
}
