/** What a joint's torque makes of its bolt, against the proof load of its class. Forces in N. */
import { coherentFloat } from "../quantities/coherent.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { proofLoad } from "../trade/bolts.ts";
import { isFaulty } from "../trade/function.ts";
import { boltOf } from "./joint-bolt.ts";
import { tighteningOf } from "./joint-friction.ts";
import { targetTorque, torqueLimits } from "./joint-torque.ts";
import type { Standing } from "./standing.ts";
import type { TreeNode } from "./tree/node.ts";

export interface Loading {
  /** The top of the torque. */
  readonly torque: Quantity;
  /** At what is aimed at, and the middle of the friction. */
  readonly preload: number;
  /** At the top of the torque and the lowest friction. */
  readonly highest: number;
  /** True where the torque has no top, as in `min 35 lbf.ft to slot`: its least stands for it. */
  readonly topless: boolean;
  /** Undefined where the class is unknown: percentages are then left out. */
  readonly proof: { readonly load: number; readonly strength: string } | undefined;
  readonly friction: string;
  /** True where the joint states no friction. */
  readonly assumed: boolean;
}

/** Undefined where bolt, torque or a figure for the friction is missing. */
export function loadingOf(standing: Pick<Standing, "definitions">, joint: TreeNode): Loading | undefined {
  const bolt = boltOf(standing, joint);
  const limits = torqueLimits(standing, joint);
  const tightening = tighteningOf(standing, joint);
  const top = limits?.upper ?? limits?.lower;
  if (bolt === undefined || tightening === undefined || limits === undefined || top === undefined)
    return undefined;
  const proof = bolt.strength && proofLoad(bolt.thread, bolt.strength);
  const { preload, highest, said, assumed } = tightening;
  return {
    torque: top,
    preload: preload(coherentFloat(targetTorque(limits) ?? top)),
    highest: highest(coherentFloat(top)),
    topless: limits.upper === undefined,
    proof:
      proof === undefined || isFaulty(proof) || bolt.strength === undefined
        ? undefined
        : { load: proof.value, strength: bolt.strength.text },
    friction: said,
    assumed,
  };
}
