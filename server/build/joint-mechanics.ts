/**
 * A joint as it is specified: whether the bolt is long enough for its nut or hole, and what its torque does to it.
 * Figures are those of the trade floor; a joint that does not state what a check needs is not checked.
 */
import { coherentFloat } from "../quantities/coherent.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { computedQuantity, convert } from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import { unit } from "../quantities/unit.ts";
import { proofLoad } from "../trade/bolts.ts";
import { describeFriction } from "../trade/friction.ts";
import { isFaulty } from "../trade/function.ts";
import { readMaterial } from "../trade/materials.ts";
import { unknownClass } from "../trade/strength-class.ts";
import { isInchThread } from "../trade/threads.ts";
import {
  engagementNeeded,
  frictionalJoint,
  preload,
  protrusion,
  torquePerForce,
} from "../trade/tightening.ts";
import { boltOf, torqueLimits } from "./joint-torque.ts";
import type { Bolt, FrictionSpec } from "./lowering/values.ts";
import type { Standing } from "./standing.ts";
import type { TreeNode } from "./tree/node.ts";

type Defined = Pick<Standing, "definitions" | "gathered" | "names">;

/** How far the thread stands out past the nut, or goes into the hole; lengths in m. */
export interface Reach {
  readonly into: "nut" | "hole";
  readonly length: number;
  /** What is asked: pitches past the nut, or the engagement that the material needs. */
  readonly needed: number;
  readonly why: string;
}

/** Thread pitches past the nut (common practice; FAA AC 43.13-1B asks at least one). */
const PITCHES_PAST_NUT = 2;

/** Heights of plain hexagon nuts as a share of the diameter (ISO 4032 style 1, 0.8 to 0.9 d), where none is stated. */
const NUT_HEIGHT = 0.8;

export function reachOf(standing: Defined, joint: TreeNode): Reach | undefined {
  const { definitions, gathered } = standing;
  const bolt = boltOf(standing, joint);
  const nut = definitions.one(joint, "nut")?.record.nut;
  const grip = definitions.one(joint, "grip")?.record.quantity;
  if (bolt?.length === undefined || nut === undefined || grip === undefined) return undefined;
  const washers = definitions.one(joint, "washers")?.record;
  const underHead =
    coherentFloat(grip) + (washers === undefined ? 0 : washers.count * coherentFloat(washers.thickness));
  if (nut.form === "tapped") {
    const material = nut.material === undefined ? undefined : readMaterial(nut.material);
    const needed =
      material && engagementNeeded(bolt.strength ?? unknownClass, material, bolt.thread.majorDiameter);
    if (needed === undefined || isFaulty(needed)) return undefined;
    return {
      into: "hole",
      length: bolt.length - underHead,
      needed: needed.value,
      why: needed.notes?.[0] ?? "",
    };
  }
  const pitches =
    definitions.one(gathered.tree.root, "protrusion")?.record.figure.toNumber() ?? PITCHES_PAST_NUT;
  const height =
    nut.height === undefined ? NUT_HEIGHT * bolt.thread.majorDiameter : coherentFloat(nut.height);
  const why = `${pitches} pitches of ${bolt.thread.designation}`;
  return {
    into: "nut",
    length: protrusion(bolt.length, coherentFloat(grip), 0, height) - (underHead - coherentFloat(grip)),
    needed: pitches * bolt.thread.pitch,
    why,
  };
}

/** A length in the units of its thread: mm, or inches for an inch thread. */
export function inThreadUnits(bolt: Bolt, metres: number): Quantity {
  const length = computedQuantity(metres, unit("m"), 3);
  const converted = convert(length, unit(isInchThread(bolt.thread) ? "in" : "mm"));
  return isFault(converted) ? length : converted;
}

/** What a joint's torque makes of its bolt. Forces in N. */
export interface Loading {
  readonly torque: Quantity;
  readonly proof: number;
  readonly strength: string;
  readonly friction: string;
  /** At the top of the torque and the lowest friction. */
  readonly highest: number;
  /** At the bottom of the torque and the highest friction. */
  readonly lowest: number;
}

/** Undefined where class, torque or friction is unknown. */
export function loadingOf(standing: Defined, joint: TreeNode): Loading | undefined {
  const bolt = boltOf(standing, joint);
  const torque = torqueLimits(standing, joint);
  const friction = standing.definitions.one(joint, "friction")?.record.friction;
  const top = torque?.upper ?? torque?.lower;
  const bottom = torque?.lower ?? torque?.upper;
  if (bolt?.strength === undefined || top === undefined || bottom === undefined) return undefined;
  const proof = proofLoad(bolt.thread, bolt.strength);
  const forces = friction && preloadOf(bolt, friction);
  if (isFaulty(proof) || forces === undefined) return undefined;
  return {
    torque: top,
    proof: proof.value,
    strength: bolt.strength.text,
    friction: forces.said,
    highest: forces.highest(coherentFloat(top)),
    lowest: forces.lowest(coherentFloat(bottom)),
  };
}

interface Preloading {
  readonly highest: (torque: number) => number;
  readonly lowest: (torque: number) => number;
  readonly said: string;
}

function preloadOf({ thread }: Bolt, friction: FrictionSpec): Preloading | undefined {
  if (friction.form === "no figure") return undefined;
  if (friction.form === "nut factor") {
    const { low, high } = friction.friction;
    return {
      highest: (torque) => preload(torque, thread, low),
      lowest: (torque) => preload(torque, thread, high),
      said: describeFriction(friction.friction),
    };
  }
  const perForce = torquePerForce(frictionalJoint(thread, friction.thread, friction.head));
  const force = (torque: number) => torque / perForce;
  return { highest: force, lowest: force, said: `thread ${friction.thread}, head ${friction.head}` };
}
