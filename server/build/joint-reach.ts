/**
 * How far a bolt goes: past its nut, or into its tapped hole. A joint that does not state what a check needs is not
 * checked. Lengths in m.
 */
import { coherentFloat } from "../quantities/coherent.ts";
import { isFaulty } from "../trade/function.ts";
import { readMaterial } from "../trade/materials.ts";
import type { StrengthClass } from "../trade/strength-class.ts";
import { readClass } from "../trade/strength-class.ts";
import { pitchesPastNut, shortestStudEnd, usualNutHeight } from "../trade/tables/joint-figures.ts";
import { engagementNeeded, protrusion } from "../trade/tightening.ts";
import { boltOf, clampedLength } from "./joint-bolt.ts";
import type { Bolt } from "./lowering/values.ts";
import type { Standing } from "./standing.ts";
import type { TreeNode } from "./tree/node.ts";

type Defined = Pick<Standing, "definitions" | "gathered">;

/** Thread beyond a nut; negative where the bolt ends inside it. */
export interface Protrusion {
  readonly length: number;
  readonly pitches: number;
  readonly neededPitches: number;
  /** False where the nut's height was taken from the standard. */
  readonly heightStated: boolean;
  /** True of a stud, whose end in the hole was taken as short as any standard has it: it can only be less. */
  readonly atMost: boolean;
}

/** Undefined without a nut, or where length or grip is not stated. */
export function protrusionOf(standing: Defined, joint: TreeNode): Protrusion | undefined {
  const { definitions, gathered } = standing;
  const bolt = boltOf(standing, joint);
  const nut = definitions.one(joint, "nut")?.record.nut;
  const clamped = clampedLength(standing, joint);
  if (bolt?.length === undefined || nut === undefined || nut.form === "tapped" || clamped === undefined)
    return undefined;
  const { majorDiameter, pitch } = bolt.thread;
  const isStud = definitions.one(joint, "bolt") === undefined;
  const height = nut.height === undefined ? usualNutHeight * majorDiameter : coherentFloat(nut.height);
  const inHole = isStud ? shortestStudEnd * majorDiameter : 0;
  const length = protrusion(bolt.length - inHole, clamped, 0, height);
  return {
    length,
    pitches: length / pitch,
    neededPitches:
      definitions.one(gathered.tree.root, "protrusion")?.record.figure.toNumber() ?? pitchesPastNut,
    heightStated: nut.height !== undefined,
    atMost: isStud,
  };
}

/** Thread in a tapped hole. */
export interface Engagement {
  /** What the bolt reaches; undefined where length or grip is not stated, and of a stud. */
  readonly reach: number | undefined;
  /** The thread that the hole has; undefined where it is not stated. */
  readonly depth: number | undefined;
  readonly needed: EngagementNeed | undefined;
}

export type EngagementNeed =
  | { readonly is: "length"; readonly length: number; readonly why: string }
  /** No thread of the bolt's own holds in it. */
  | { readonly is: "insert"; readonly material: string };

/** Undefined where the joint has no tapped hole. */
export function engagementOf(
  standing: Pick<Standing, "definitions">,
  joint: TreeNode,
): Engagement | undefined {
  const { definitions } = standing;
  const nut = definitions.one(joint, "nut")?.record.nut;
  const bolt = boltOf(standing, joint);
  if (nut?.form !== "tapped" || bolt === undefined) return undefined;
  const clamped = clampedLength(standing, joint);
  const isStud = definitions.one(joint, "bolt") === undefined;
  return {
    reach: isStud || bolt.length === undefined || clamped === undefined ? undefined : bolt.length - clamped,
    depth: nut.depth === undefined ? undefined : coherentFloat(nut.depth),
    needed: nut.material === undefined ? undefined : needOf(bolt, nut.material),
  };
}

const NEEDS_INSERT: ReadonlySet<string> = new Set(["plastic", "timber", "composite", "rubber", "leather"]);

/** Bolts of unknown class, and strong ones in a material without a figure for them, need at least what class 8.8 does. */
function needOf({ strength, thread }: Bolt, word: string): EngagementNeed | undefined {
  if (NEEDS_INSERT.has(word)) return { is: "insert", material: word };
  const material = readMaterial(word);
  if (material === undefined) return undefined;
  for (const cls of [strength, USUAL]) {
    if (cls === undefined) continue;
    const needed = engagementNeeded(cls, material, thread.majorDiameter);
    if (!isFaulty(needed))
      return { is: "length", length: needed.value, why: whyNeeded(needed.value, thread.majorDiameter, word) };
  }
  return undefined;
}

const USUAL: StrengthClass | undefined = readClass("class 8.8");

function whyNeeded(needed: number, diameter: number, material: string): string {
  return `${Number((needed / diameter).toFixed(2))} d in ${material.replace("_", " ")}`;
}
