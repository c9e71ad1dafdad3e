/** What a joint is to be tightened to, as limits: the stated torque, that of its class, or none by hand. */
import type { Limits } from "../quantities/limits.ts";
import { toleranceLimits } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { add, computedQuantity, convert, divide, hasDimension, quantityOf } from "../quantities/quantity.ts";
import { unlessFault } from "../quantities/quantity-fault.ts";
import { unit } from "../quantities/unit.ts";
import type { Verdict } from "../quantities/verdict.ts";
import { judge, judgeExactly } from "../quantities/verdict.ts";
import { proofLoad } from "../trade/bolts.ts";
import { isFaulty } from "../trade/function.ts";
import { preloadShare } from "../trade/tables/joint-figures.ts";
import { TORQUE_TOLERANCE } from "./figures.ts";
import type { TorqueFault } from "./finding-data/joints.ts";
import { boltOf } from "./joint-bolt.ts";
import { tighteningOf } from "./joint-friction.ts";
import { precisionOf, uncertaintyFor } from "./judgement.ts";
import { Remembered } from "./remembered.ts";
import type { Standing } from "./standing.ts";
import type { TorqueReading } from "./states.ts";
import { AspectSet } from "./tree/aspect.ts";
import type { TreeNode } from "./tree/node.ts";

type Defined = Pick<Standing, "definitions">;

/** Limits of a joint's torque; undefined where it is by hand, unstated, or cannot be computed. */
export function torqueLimits({ definitions }: Defined, joint: TreeNode): Limits | undefined {
  const torque = definitions.one(joint, "torque")?.record.torque;
  if (torque?.form === "limits") return withTolerance(torque.limits);
  return torque?.form === "from class" ? classTorque({ definitions }, joint) : undefined;
}

/** Limits of the angle that is turned behind the torque, in degrees. */
export function angleLimits({ definitions }: Defined, joint: TreeNode): Limits | undefined {
  const torque = definitions.one(joint, "torque")?.record.torque;
  return torque?.form === "limits" && torque.then !== undefined
    ? withTolerance({ nominal: inDegrees(torque.then) })
    : undefined;
}

/** What is aimed at: the nominal torque, else the middle of its limits, else the only one. */
export function targetTorque({ nominal, lower, upper }: Limits): Quantity | undefined {
  if (nominal !== undefined || lower === undefined || upper === undefined) return nominal ?? lower ?? upper;
  const sum = unlessFault(add(lower, upper));
  const middle = unlessFault(sum && divide(sum, quantityOf(2)));
  return unlessFault(middle && convert(middle, lower.unit)) ?? lower;
}

type Figure = Pick<TorqueReading, "torque" | "angle" | "gauge">;

const faults = new Remembered<Figure, TorqueFault | undefined>();
const GROUNDS = new AspectSet("torque", "bolt", "stud", "nut", "friction", "lock");

/** The first thing that is wrong with a figure, the worse first; undefined where it is as asked, or nothing is asked. */
export function torqueFault(standing: Defined, joint: TreeNode, figure: Figure): TorqueFault | undefined {
  const grounds = [joint, standing.definitions.ofThing(joint, GROUNDS)];
  return faults.of(figure, grounds, () => faultOf(standing, joint, figure));
}

function faultOf(
  standing: Defined,
  joint: TreeNode,
  { torque, angle, gauge }: Figure,
): TorqueFault | undefined {
  const limits = torqueLimits(standing, joint);
  if (limits === undefined) return undefined;
  const exact = unlessFault(judgeExactly(torque, limits));
  if (exact === undefined) return undefined;
  if (exact.verdict === "outside") return outside("torque", exact, limits);
  const ofAngle = angleFault(standing, joint, angle);
  if (ofAngle !== undefined) return ofAngle;
  return doubts.of(limits, [torque, gauge && precisionOf(gauge)], () => doubtOf(torque, gauge, limits));
}

/** Doubt about the torque that each joint was last tightened to. */
const doubts = new Remembered<Limits, TorqueFault | undefined>();

/** Whether it is uncertain that a torque within the limits is. */
function doubtOf(torque: Quantity, gauge: TorqueReading["gauge"], limits: Limits): TorqueFault | undefined {
  const uncertainty = uncertaintyFor(undefined, gauge, torque);
  const doubtful = unlessFault(judge([torque], uncertainty, limits, 0));
  if (uncertainty === undefined || doubtful?.verdict !== "uncertain") return undefined;
  const { reading, limit, side } = doubtful;
  return { is: "doubtful", reading, uncertainty, limit, side };
}

/** Whether a fault means that the joint is not as asked: doubt about the wrench does not. */
export function isGrave(fault: TorqueFault | undefined): boolean {
  return fault !== undefined && fault.is !== "doubtful";
}

/** The stage on the way to the torque that a figure is: below the torque, and within the tolerance of that stage. */
export function stageReached(standing: Defined, joint: TreeNode, torque: Quantity): Quantity | undefined {
  const limits = torqueLimits(standing, joint);
  if (limits === undefined) return undefined;
  const final = unlessFault(judgeExactly(torque, limits));
  if (final?.verdict !== "outside" || final.side !== "lower") return undefined;
  const stages = standing.definitions.one(joint, "stages")?.record.quantities ?? [];
  return stages.find((stage) => {
    const around = withTolerance({ nominal: stage });
    const verdict = unlessFault(around && judgeExactly(torque, around));
    return verdict !== undefined && verdict.verdict !== "outside";
  });
}

function angleFault(
  standing: Defined,
  joint: TreeNode,
  angle: Quantity | undefined,
): TorqueFault | undefined {
  const limits = angleLimits(standing, joint);
  if (limits === undefined) return angle === undefined ? undefined : { is: "angle unasked", angle };
  const asked = standing.definitions.one(joint, "torque")?.record.torque;
  if (angle === undefined)
    return asked?.form === "limits" && asked.then !== undefined
      ? { is: "angle missing", angle: asked.then }
      : undefined;
  const verdict = unlessFault(judge([inDegrees(angle)], undefined, limits, 0));
  return verdict?.verdict === "outside" ? outside("angle", verdict, limits) : undefined;
}

function outside(
  of: "torque" | "angle",
  { reading, limit, side, excess, margin }: Verdict,
  limits: Limits,
): TorqueFault {
  return { is: "outside", of, reading, limits, limit, side, by: excess ?? margin };
}

/** A turn is 360°, and a flat of a hexagon a sixth of it; elsewhere counts convert to nothing. */
function inDegrees(angle: Quantity): Quantity {
  const whole = hasDimension(angle, "turn") ? 360 : hasDimension(angle, "flat") ? 60 : undefined;
  if (whole !== undefined) return quantityOf(angle.value.times(whole), unit("deg"));
  return unlessFault(convert(angle, unit("deg"))) ?? angle;
}

/** What each torque without a tolerance comes to: it is asked for wherever the joint is. */
const remembered = new WeakMap<Limits, Limits>();

function withTolerance(limits: Limits): Limits | undefined {
  if (limits.lower !== undefined || limits.upper !== undefined) return limits;
  const known = remembered.get(limits);
  if (known !== undefined) return known;
  const tolerance = quantityOf(TORQUE_TOLERANCE, unit("%"));
  const toleranced = unlessFault(limits.nominal && toleranceLimits(limits.nominal, tolerance));
  if (toleranced !== undefined) remembered.set(limits, toleranced);
  return toleranced;
}

/** Of 75 % of proof load, at the middle of the friction. */
function classTorque(standing: Defined, joint: TreeNode): Limits | undefined {
  const bolt = boltOf(standing, joint);
  const tightening = tighteningOf(standing, joint);
  if (bolt?.strength === undefined || tightening === undefined) return undefined;
  const proof = proofLoad(bolt.thread, bolt.strength);
  if (isFaulty(proof)) return undefined;
  const torque = tightening.torqueFor(preloadShare * proof.value);
  return withTolerance({ nominal: computedQuantity(torque, unit("N.m"), 3) });
}
