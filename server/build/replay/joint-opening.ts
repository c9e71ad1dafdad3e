/** How joints come apart: by what is removed, by loosening, by parts that are fitted to them; and what each begins as. */
import { connectionsOf } from "../connections.ts";
import { joinedParts } from "../criticality.ts";
import { newestOf } from "../joint-setting.ts";
import { later } from "../later.ts";
import { NO_RUNNING } from "../running.ts";
import type { DatedFact, JointStage, JointState, PartState } from "../states.ts";
import type { TreeNode } from "../tree/node.ts";
import { below, isWithin } from "../tree/node.ts";
import { whereabouts } from "../whereabouts.ts";
import { overtake } from "./joint-complaints.ts";
import type { Replay } from "./replay.ts";
import type { Growing } from "./state-table.ts";
import { openSystemsOn } from "./systems.ts";

/** Every joint as the log begins: open where a part of it is not on. */
export function jointsAtStart(replay: Replay): void {
  for (const node of replay.gathered.tree.ofKind("joint")) {
    const apart = joinedParts(replay, node).some((part) => whereabouts(replay, part)?.place !== "on");
    replay.joints.set(node, {
      node,
      stage: apart ? "open" : "as_found",
      apart,
      opened: undefined,
      undone: undefined,
      nipped: undefined,
      tightened: undefined,
      reading: undefined,
      without: undefined,
      locked: undefined,
      marked: undefined,
      seen: undefined,
      seenBySame: undefined,
      rechecked: undefined,
      sinceTightened: NO_RUNNING,
      sinceRechecked: NO_RUNNING,
      recheckDue: undefined,
      hardware: "as found",
    });
  }
}

/** Opens a joint: whatever was done to it is undone. One that is open already stays as it is. */
export function openJoint(replay: Replay, node: TreeNode, fact: DatedFact): void {
  const joint = jointOf(replay, node);
  if (joint.stage === "open" && joint.opened !== undefined) return;
  overtake(replay, node, "opened");
  Object.assign(joint, {
    stage: "open",
    opened: fact,
    undone: fact,
    nipped: undefined,
    tightened: undefined,
    reading: undefined,
    without: undefined,
    locked: undefined,
    marked: undefined,
    seen: undefined,
    seenBySame: undefined,
    rechecked: undefined,
    recheckDue: undefined,
  } satisfies Partial<JointState>);
  replay.disturb(node, fact);
  openSystemsOn(replay, node, fact);
}

/**
 * A part comes off: its joints open, but for those that are wholly within what comes off with it. A part takes along
 * what is in it; as a unit, `together` come off in one piece.
 */
export function breakJoints(
  replay: Replay,
  part: TreeNode,
  fact: DatedFact,
  together: ReadonlySet<TreeNode> = new Set(),
): void {
  for (const joint of connectionsOf(replay).jointsOf(part)) {
    const joined = joinedParts(replay, joint);
    const inside = joined.every((one) => isWithin(one.path, part.path) || isPartOf(one, together));
    if (!inside || isHalfStated(joined)) openJoint(replay, joint, fact);
  }
}

/** A joint of one part holds it to something that is not said: that stays behind. */
function isHalfStated(joined: readonly TreeNode[]): boolean {
  return joined.length < 2;
}

function isPartOf(node: TreeNode, together: ReadonlySet<TreeNode>): boolean {
  for (let around: TreeNode | undefined = node; around !== undefined; around = around.parent) {
    if (together.has(around)) return true;
  }
  return false;
}

/**
 * A part goes on, with what is in it: their joints are open. One within a unit is not, as long as the unit goes on in
 * one day; nor is one that was tightened on the bench, with all of its parts there.
 */
export function joinJoints(replay: Replay, part: TreeNode, fact: DatedFact<"fitted">): void {
  const { jointsOf } = connectionsOf(replay);
  for (const node of new Set([part, ...below(part)].flatMap((inner) => jointsOf(inner)))) {
    const joint = jointOf(replay, node);
    if (joint.stage === "open") continue;
    const others = joinedParts(replay, node).filter((other) => !isWithin(other.path, part.path));
    const parted = others.some(
      (other) => whereabouts(replay, other)?.place === "on" && lastPlaced(replay, other)?.date !== fact.date,
    );
    if (joint.without !== undefined || parted) openJoint(replay, node, fact);
  }
}

/** The fact that last put a part, or one around it, where it is. */
function lastPlaced(replay: Replay, part: TreeNode): DatedFact | undefined {
  let last: DatedFact | undefined;
  for (let around: TreeNode | undefined = part; around !== undefined; around = around.parent) {
    last = later(last, replay.parts.get(around)?.placed);
  }
  return last;
}

/** A part that was on for trial is fitted for good: what was tightened since that trial secures nothing. */
export function endTrial(
  replay: Replay,
  part: TreeNode,
  trial: DatedFact | undefined,
  fact: DatedFact<"fitted">,
): void {
  for (const node of connectionsOf(replay).jointsOf(part)) {
    const { tightened } = jointOf(replay, node);
    if (tightened !== undefined && tightened.order > (trial?.order ?? -1)) openJoint(replay, node, fact);
  }
}

/** A part that is not there for its joint: off while others are on, away, or gone. All of them on the bench is no lack. */
export function absentPart(
  replay: Replay,
  joint: TreeNode,
): { readonly part: TreeNode; readonly state: PartState } | undefined {
  const there = joinedParts(replay, joint).flatMap((part) => {
    const where = whereabouts(replay, part);
    return where === undefined ? [] : [{ part, ...where }];
  });
  const onBench = there.every(({ place }) => place === "off");
  if (onBench && !isHalfStated(there.map(({ part }) => part))) return undefined;
  return there.find(({ place }) => place !== "on" && place !== "trial");
}

/** The reading that sets a joint since it was last opened or run up. */
export function setByReading(replay: Replay, joint: JointState) {
  return newestOf(replay, joint);
}

/** The state of a joint; every joint has one from the start. */
export function jointOf(replay: Replay, node: TreeNode): Growing<JointState> {
  const joint = replay.joints.get(node);
  if (joint === undefined) throw new Error(`no state for the joint ${node.path}`);
  return joint;
}

/** The stage is the furthest of what has been done and not undone. */
export function restage(replay: Replay, joint: Growing<JointState>): void {
  joint.stage = stageOf(joint, replay.definitions.one(joint.node, "set_by") !== undefined);
}

/** A joint that is set by a measurement counts as tightened once it is locked or marked. */
function stageOf(
  { marked, locked, tightened, nipped, opened, apart }: JointState,
  setByMeasurement: boolean,
): JointStage {
  if (tightened !== undefined || setByMeasurement) {
    if (marked !== undefined) return "marked";
    if (locked !== undefined) return "locked";
    if (tightened !== undefined) return "torqued";
  }
  if (nipped !== undefined) return "nipped";
  return opened === undefined && !apart ? "as_found" : "open";
}
