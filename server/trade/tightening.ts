/** Tightening: torque and preload by the short and the long form, and what a tightened bolt needs to hold on to. */

import { proofLoad, underHeadBearingDiameter } from "./bolts.ts";
import { isFaulty } from "./function.ts";
import type { Material } from "./materials.ts";
import type { Computed, Faulty } from "./result.ts";
import type { StrengthClass } from "./strength-class.ts";
import { strengthsOf } from "./strength-class.ts";
import { engagementFactors, preloadShare } from "./tables/joint-figures.ts";
import type { Thread } from "./thread.ts";
import { pitchDiameter, rootDiameter } from "./threads.ts";

/** Preload of the short form, N: F = T / (K·d). Torque in N·m. */
export function preload(torque: number, thread: Thread, nutFactor: number): number {
  return torque / (nutFactor * thread.majorDiameter);
}

/** Torque of the short form, N·m: T = K·F·d. */
export function torqueFor(force: number, thread: Thread, nutFactor: number): number {
  return nutFactor * force * thread.majorDiameter;
}

/** What the long form takes: both frictions and the diameters at which they act, m. */
export interface FrictionalJoint {
  readonly pitch: number;
  readonly pitchDiameter: number;
  readonly flankAngle: number;
  readonly threadFriction: number;
  readonly headFriction: number;
  readonly bearingDiameter: number;
}

/**
 * Torque of the long form for each newton of preload, m: 0.159 P + 0.577 d2 μ + Dkm/2 μ. The coefficients 1/(2π) and
 * 1/(2 cos of half the flank angle) are kept to three decimals, as VDI 2230 prints them.
 */
export function torquePerForce(joint: FrictionalJoint): number {
  const pitchCoefficient = threeDecimals(1 / (2 * Math.PI));
  const threadCoefficient = threeDecimals(1 / (2 * Math.cos(joint.flankAngle / 2)));
  return (
    pitchCoefficient * joint.pitch +
    threadCoefficient * joint.pitchDiameter * joint.threadFriction +
    0.5 * joint.bearingDiameter * joint.headFriction
  );
}

/** The long form's joint of a thread, with the ring under a hexagon head where no other is given. */
export function frictionalJoint(
  thread: Thread,
  threadFriction: number,
  headFriction: number,
  bearingDiameter = underHeadBearingDiameter(thread).value,
): FrictionalJoint {
  return {
    pitch: thread.pitch,
    pitchDiameter: pitchDiameter(thread),
    flankAngle: thread.flankAngle,
    threadFriction,
    headFriction,
    bearingDiameter,
  };
}

/**
 * Largest preload when tightening, N: the bolt, stretched and twisted at once, reaches `utilisation` of its yield
 * stress (VDI 2230, von Mises; twist fully plastic, hence 3/2; 1.155 = 1/cos 30° as printed there).
 */
export function assemblyPreload(
  thread: Thread,
  yieldStress: number,
  threadFriction: number,
  utilisation = 0.9,
): number {
  const d2 = pitchDiameter(thread);
  const d0 = (d2 + rootDiameter(thread)) / 2;
  const lead = thread.pitch / (Math.PI * d2);
  const drag = threadFriction * threeDecimals(1 / Math.cos(thread.flankAngle / 2));
  const twist = 1.5 * (d2 / d0) * (lead + drag);
  return ((Math.PI / 4) * d0 ** 2 * utilisation * yieldStress) / Math.sqrt(1 + 3 * twist ** 2);
}

/** Torque of a class, N·m: that of a preload of 75 % of proof load. */
export function torqueOfClass(
  thread: Thread,
  cls: StrengthClass,
  nutFactor: number,
): Computed<number> | Faulty {
  const proof = proofLoad(thread, cls);
  if (isFaulty(proof)) return proof;
  const notes = proof.notes === undefined ? {} : { notes: proof.notes };
  return { value: torqueFor(preloadShare * proof.value, thread, nutFactor), ...notes };
}

/** What to set a wrench to when a straight extension lengthens it, N·m. */
export function wrenchSetting(torque: number, wrenchLength: number, extension: number): number {
  return (torque * wrenchLength) / (wrenchLength + extension);
}

/** Length of full thread that a tapped hole of a material needs, m; diameter in m. */
export function engagementNeeded(
  cls: StrengthClass,
  material: Material,
  diameter: number,
): Computed<number> | Faulty {
  const strengths = strengthsOf(cls, diameter);
  if (isFaulty(strengths)) return strengths;
  const strong = strengths.tensile > 830e6;
  const figure = engagementFactors.find((row) => row.material === material.name);
  const factor = strong ? figure?.strong : figure?.usual;
  if (figure === undefined || factor === undefined) {
    const known = engagementFactors.filter((row) => !strong || row.strong !== undefined);
    return {
      fault: {
        kind: "not-in-table",
        wanted: `${cls.text} in ${material.name}`,
        table: "thread engagement (common practice)",
        known: known.map((row) => row.material),
      },
    };
  }
  return {
    value: factor * diameter,
    notes: [
      `${factor} d of full thread, less the chamfer (common practice)`,
      ...(figure.remark === undefined ? [] : [figure.remark]),
    ],
  };
}

/** Length of bolt beyond the nut, m; negative when it does not reach through. */
export function protrusion(length: number, grip: number, washers: number, nutHeight: number): number {
  return length - grip - washers - nutHeight;
}

function threeDecimals(value: number): number {
  return Math.round(value * 1000) / 1000;
}
