/** What the torque sheet says of one joint, as values: for the report object and for the printed table alike. */

import { awaitingOf } from "../build/joint-awaiting.ts";
import { jointBolt } from "../build/joint-bolt.ts";
import type { Loading } from "../build/joint-loading.ts";
import { loadingOf } from "../build/joint-loading.ts";
import type { Protrusion } from "../build/joint-reach.ts";
import { protrusionOf } from "../build/joint-reach.ts";
import { setBy } from "../build/joint-setting.ts";
import { angleLimits, targetTorque, torqueLimits } from "../build/joint-torque.ts";
import type { Securing } from "../build/securing.ts";
import { securing } from "../build/securing.ts";
import type { Standing } from "../build/standing.ts";
import type { DatedFact, JointState } from "../build/states.ts";
import type { TreeNode } from "../build/tree/node.ts";
import type { Limits } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { formatQuantity } from "../quantities/quantity.ts";
import { torqueScatter } from "../trade/tables/joint-figures.ts";

export interface JointRow {
  readonly node: TreeNode;
  readonly state: JointState;
  readonly securing: Securing;
  readonly torque: TorqueSheet | undefined;
  /** `front.left.hub.end_float`, where it is set by that and not by torque. */
  readonly setBy: string | undefined;
  readonly loading: Loading | undefined;
  readonly protrusion: Protrusion | undefined;
  readonly bolt: string | undefined;
  readonly lock: string | undefined;
  readonly marks: boolean;
  readonly after: readonly { readonly name: string; readonly met: boolean }[];
  /** What was done to it, in order. */
  readonly done: readonly DoneToJoint[];
}

export interface TorqueSheet {
  readonly text: string;
  readonly target: Quantity | undefined;
  readonly limits: Limits | undefined;
  readonly angle: Quantity | undefined;
  /** Computed from the strength class. */
  readonly estimated: boolean;
}

export interface DoneToJoint {
  readonly text: string;
  readonly fact: DatedFact;
}

/** The shares of a computed preload that tightening by torque leaves it within: 0.65 and 1.35. */
export const SCATTER = { least: 1 - torqueScatter.wide, most: 1 + torqueScatter.wide } as const;

export function jointRow(standing: Standing, state: JointState): JointRow {
  const { node } = state;
  const { definitions } = standing;
  const by = setBy(standing, node);
  return {
    node,
    state,
    securing: securing(standing, node),
    torque: torqueSheet(standing, node),
    setBy: by && `${by.node.path}.${by.name}`,
    loading: loadingOf(standing, node),
    protrusion: protrusionOf(standing, node),
    bolt: jointBolt(standing, node),
    lock: definitions.one(node, "lock")?.record.choice,
    marks: definitions.one(node, "mark")?.record.yes === true,
    after: awaitingOf(standing, node).map(({ definition, met }) => ({
      name: definition.name,
      met: met !== undefined,
    })),
    done: doneTo(state),
  };
}

function torqueSheet(standing: Standing, joint: TreeNode): TorqueSheet | undefined {
  const torque = standing.definitions.one(joint, "torque")?.record.torque;
  if (torque === undefined) return undefined;
  const limits = torqueLimits(standing, joint);
  const then = torque.form === "limits" ? torque.then : undefined;
  return {
    text: torqueText(torque.form, limits, {
      then,
      toSlot: torque.form === "limits" && torque.toSlot,
    }),
    target: limits && targetTorque(limits),
    limits,
    angle: then === undefined ? undefined : (angleLimits(standing, joint)?.nominal ?? then),
    estimated: torque.form === "from class",
  };
}

function torqueText(
  form: "limits" | "from class" | "by hand",
  limits: Limits | undefined,
  { then, toSlot }: { readonly then: Quantity | undefined; readonly toSlot: boolean },
): string {
  if (form === "by hand") return "by hand";
  if (limits === undefined) return "from class, not computed";
  const slot = toSlot ? " to the slot" : "";
  const angle = then === undefined ? "" : ` then ${formatQuantity(then)}`;
  const text = `${limitsText(limits)}${slot}${angle}`;
  return form === "from class" ? `about ${text}, from class` : text;
}

function limitsText({ nominal, lower, upper }: Limits): string {
  const range = [lower, upper].flatMap((bound) => (bound === undefined ? [] : [formatQuantity(bound)]));
  if (lower === undefined || upper === undefined)
    return `${upper === undefined ? "at least" : "at most"} ${range.join("")}`;
  return nominal === undefined ? range.join(" to ") : `${formatQuantity(nominal)} (${range.join(" to ")})`;
}

function doneTo({
  opened,
  nipped,
  tightened,
  reading,
  locked,
  marked,
  seen,
  rechecked,
}: JointState): DoneToJoint[] {
  const done: (DoneToJoint | undefined)[] = [
    opened && { text: "opened", fact: opened },
    nipped && { text: "nipped", fact: nipped },
    tightened && {
      text:
        tightened.fact.word === "tightened" || reading === undefined
          ? "tightened by feel"
          : `torqued to ${formatQuantity(reading.torque)}`,
      fact: tightened,
    },
    locked && { text: `locked with ${locked.lock.replace("_", " ")}`, fact: locked.fact },
    marked && { text: "marked", fact: marked },
    seen && { text: `seen by ${seen.fact.by ?? "somebody else"}`, fact: seen },
    rechecked && { text: "checked again", fact: rechecked },
  ];
  return done.flatMap((one) => one ?? []).sort((a, b) => a.fact.order - b.fact.order);
}
