/** What a joint is to be tightened to, as limits: the stated torque, that of its class, or none by hand. */
import type { Limits } from "../quantities/limits.ts";
import { toleranceLimits } from "../quantities/limits.ts";
import { computedQuantity, quantityOf } from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import { unit } from "../quantities/unit.ts";
import { nominalNutFactor } from "../trade/friction.ts";
import { isFaulty } from "../trade/function.ts";
import { torqueOfClass } from "../trade/tightening.ts";
import type { FrictionSpec } from "./lowering/values.ts";
import type { Standing } from "./standing.ts";
import type { TreeNode } from "./tree/node.ts";

/** Of a torque that states no tolerance (common practice, no source). */
const TOLERANCE = quantityOf(10, unit("%"));

/** Limits of a joint's torque; undefined where it is by hand, unstated, or cannot be computed. */
export function torqueLimits(
  { definitions }: Pick<Standing, "definitions">,
  joint: TreeNode,
): Limits | undefined {
  const torque = definitions.one(joint, "torque")?.record.torque;
  if (torque?.form === "limits") return withTolerance(torque.limits);
  return torque?.form === "from class" ? classTorque({ definitions }, joint) : undefined;
}

/** Limits of the angle that is turned behind the torque. */
export function angleLimits(
  { definitions }: Pick<Standing, "definitions">,
  joint: TreeNode,
): Limits | undefined {
  const torque = definitions.one(joint, "torque")?.record.torque;
  return torque?.form === "limits" && torque.then !== undefined
    ? withTolerance({ nominal: torque.then })
    : undefined;
}

function withTolerance(limits: Limits): Limits | undefined {
  if (limits.lower !== undefined || limits.upper !== undefined) return limits;
  const toleranced = limits.nominal && toleranceLimits(limits.nominal, TOLERANCE);
  return toleranced === undefined || isFault(toleranced) ? undefined : toleranced;
}

function classTorque({ definitions }: Pick<Standing, "definitions">, joint: TreeNode): Limits | undefined {
  const bolt = boltOf({ definitions }, joint);
  const factor = nutFactorOf(definitions.one(joint, "friction")?.record.friction);
  if (bolt?.strength === undefined || factor === undefined) return undefined;
  const torque = torqueOfClass(bolt.thread, bolt.strength, factor);
  if (isFaulty(torque)) return undefined;
  return withTolerance({ nominal: computedQuantity(torque.value, unit("N.m"), 3) });
}

/** The bolt or stud of a joint. */
export function boltOf({ definitions }: Pick<Standing, "definitions">, joint: TreeNode) {
  return (definitions.one(joint, "bolt") ?? definitions.one(joint, "stud"))?.record.bolt;
}

function nutFactorOf(friction: FrictionSpec | undefined): number | undefined {
  return friction?.form === "nut factor" ? nominalNutFactor(friction.friction) : undefined;
}
