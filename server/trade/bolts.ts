import { isFaulty } from "./function.ts";
import type { Computed, Faulty } from "./result.ts";
import type { NutClass, StrengthClass, Strengths } from "./strength-class.ts";
import { nutProofStress, strengthsOf } from "./strength-class.ts";
import { hexagonHeads } from "./tables/hexagon-heads.ts";
import { coarseProofLoads, proofLoadClasses } from "./tables/proof-loads.ts";
import type { Thread } from "./thread.ts";
import { coarsePitch } from "./thread.ts";
import { isInchThread, stressArea } from "./threads.ts";

const MILLIMETRE = 0.001;
const INCH = 0.0254;

/**
 * Stress area as the standards print it and build their loads on: three figures for metric threads (ISO 898-1),
 * four decimals of a square inch up to 0.16 in² and three above for unified ones (ASME B1.1), m².
 */
export function nominalStressArea(thread: Thread): number {
  const area = stressArea(thread);
  if (thread.series === "M") return Number((area * 1e6).toPrecision(3)) * 1e-6;
  if (!thread.series.startsWith("UN")) return area;
  const squareInches = area / INCH ** 2;
  return Number(squareInches.toFixed(squareInches < 0.16 ? 4 : 3)) * INCH ** 2;
}

/** Load up to which the bolt must stretch elastically, N; the figure ISO 898-1 prints where it prints one. */
export function proofLoad(thread: Thread, cls: StrengthClass): Computed<number> | Faulty {
  const printed = printedProofLoad(thread, cls);
  if (printed !== undefined) return { value: printed, notes: ["as ISO 898-1 prints it"] };
  return load(thread, cls, "proof");
}

/** Load at which the bolt yields, N. */
export function yieldLoad(thread: Thread, cls: StrengthClass): Computed<number> | Faulty {
  return load(thread, cls, "yield");
}

/** Load that breaks the weakest bolt of the class, N. */
export function tensileLoad(thread: Thread, cls: StrengthClass): Computed<number> | Faulty {
  return load(thread, cls, "tensile");
}

/** Proof load of a nut of style 1 with coarse thread, N; undefined outside the table of ISO 898-2. */
export function nutProofLoad(thread: Thread, cls: NutClass): number | undefined {
  const stress = nutProofStress(cls, thread.majorDiameter);
  return stress === undefined ? undefined : nominalStressArea(thread) * stress;
}

/** The proof load that ISO 898-1 prints for a coarse metric thread, N. */
export function printedProofLoad(thread: Thread, cls: StrengthClass): number | undefined {
  if (thread.series !== "M" || cls.system !== "ISO 898-1") return undefined;
  const diameter = millimetres(thread.majorDiameter);
  if (coarsePitch(diameter) !== millimetres(thread.pitch)) return undefined;
  const place = proofLoadClasses.indexOf(cls.name);
  return coarseProofLoads.get(diameter)?.[place];
}

/**
 * Length of thread on a bolt that is not threaded to the head, m: 2d + 6 mm up to 125 mm of length, 2d + 12 mm up
 * to 200 mm, 2d + 25 mm above (ISO 888); of an inch bolt 2d + 1/4 in up to 6 in, 2d + 1/2 in above (ASME B18.2.1,
 * from memory; British bolts are taken alike). A short bolt is threaded all along.
 */
export function threadLength(thread: Thread, length: number): number {
  return Math.min(
    length,
    2 * thread.majorDiameter + (isInchThread(thread) ? inchesBeyond(length) : beyond(length)),
  );
}

/** The standard that a length of thread is reckoned by. */
export function threadLengthStandard(thread: Thread): string {
  return isInchThread(thread) ? "ASME B18.2.1" : "ISO 888";
}

function beyond(length: number): number {
  return length <= 0.125 ? 0.006 : length <= 0.2 ? 0.012 : 0.025;
}

function inchesBeyond(length: number): number {
  return length <= 6 * INCH + 1e-9 ? INCH / 4 : INCH / 2;
}

export interface BearingDiameter {
  /** Mean diameter of the ring on which the head rubs, m. */
  readonly value: number;
  readonly source: string;
}

/** Mean diameter on which head or nut rub: of an ISO hexagon where there is one, else 1.25 d. */
export function underHeadBearingDiameter(thread: Thread): BearingDiameter {
  const head = thread.series === "M" ? hexagonHeads.get(millimetres(thread.majorDiameter)) : undefined;
  if (head === undefined) {
    return {
      value: 1.25 * thread.majorDiameter,
      source: "1.25 d (after Shigley, no head table for this thread)",
    };
  }
  return {
    value: ((head.washerFace + head.clearanceHole) / 2) * MILLIMETRE,
    source: "hexagon head ISO 4014, clearance hole ISO 273 medium",
  };
}

function load(
  thread: Thread,
  cls: StrengthClass,
  which: "proof" | "yield" | "tensile",
): Computed<number> | Faulty {
  const strengths: Strengths | Faulty = strengthsOf(cls, thread.majorDiameter);
  if (isFaulty(strengths)) return strengths;
  const notes = strengths.remark === undefined ? {} : { notes: [strengths.remark] };
  return { value: nominalStressArea(thread) * strengths[which], ...notes };
}

function millimetres(metres: number): number {
  return Number((metres / MILLIMETRE).toFixed(6));
}
