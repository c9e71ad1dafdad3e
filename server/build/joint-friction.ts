/** What a torque makes of a joint's bolt, by the friction that is stated or assumed. Forces in N, torques in N.m. */
import type { Friction } from "../trade/friction.ts";
import { describeFriction, nominalNutFactor, readFriction } from "../trade/friction.ts";
import type { Thread } from "../trade/thread.ts";
import { frictionalJoint, preload, torqueFor, torquePerForce } from "../trade/tightening.ts";
import { boltOf } from "./joint-bolt.ts";
import type { FrictionSpec } from "./lowering/values.ts";
import type { Standing } from "./standing.ts";
import type { TreeNode } from "./tree/node.ts";

/** Torque and preload of one joint, each the other's inverse at the middle of the friction. */
export interface Tightening {
  readonly preload: (torque: number) => number;
  /** At the lowest friction that is published for its state, and at the highest. */
  readonly highest: (torque: number) => number;
  readonly lowest: (torque: number) => number;
  readonly torqueFor: (preload: number) => number;
  readonly said: string;
  /** True where the joint states no friction. */
  readonly assumed: boolean;
}

/** Undefined without a bolt, or where the friction has no figure of its own. */
export function tighteningOf(
  { definitions }: Pick<Standing, "definitions">,
  joint: TreeNode,
): Tightening | undefined {
  const bolt = boltOf({ definitions }, joint);
  const stated = definitions.one(joint, "friction")?.record.friction;
  const friction = stated ?? ASSUMED;
  if (bolt === undefined || friction === undefined) return undefined;
  const tightening = withFriction(bolt.thread, friction);
  return tightening && { ...tightening, assumed: stated === undefined };
}

/** Threads of which nothing is said are taken as dry. */
const ASSUMED: FrictionSpec | undefined = assumed("dry");

function assumed(word: string): FrictionSpec | undefined {
  const read = readFriction(word);
  return read?.kind === "friction" ? { form: "nut factor", friction: read } : undefined;
}

function withFriction(thread: Thread, friction: FrictionSpec): Omit<Tightening, "assumed"> | undefined {
  switch (friction.form) {
    case "nut factor":
      return withNutFactor(thread, friction.friction);
    case "coefficients": {
      const perForce = torquePerForce(frictionalJoint(thread, friction.thread, friction.head));
      const force = (torque: number) => torque / perForce;
      return {
        preload: force,
        highest: force,
        lowest: force,
        torqueFor: (load) => load * perForce,
        said: `thread ${friction.thread}, head ${friction.head}`,
      };
    }
    case "no figure":
      return undefined;
  }
}

function withNutFactor(thread: Thread, friction: Friction): Omit<Tightening, "assumed"> {
  const middle = nominalNutFactor(friction);
  return {
    preload: (torque) => preload(torque, thread, middle),
    highest: (torque) => preload(torque, thread, friction.low),
    lowest: (torque) => preload(torque, thread, friction.high),
    torqueFor: (load) => torqueFor(load, thread, middle),
    said: describeFriction(friction),
  };
}
