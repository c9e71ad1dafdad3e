/** Joints: opened by what comes off, tightened, locked, marked, seen, and checked again. */
import type { Limits } from "../../quantities/limits.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import { isFault } from "../../quantities/quantity-fault.ts";
import { judge } from "../../quantities/verdict.ts";
import { isCritical, joinedParts } from "../criticality.ts";
import type { NamedDefinition } from "../definitions.ts";
import { gaugeDoubts } from "../gauge-check.ts";
import { angleLimits, torqueLimits } from "../joint-torque.ts";
import { uncertaintyFor } from "../judgement.ts";
import type { DatedFact, JointStage, JointState } from "../states.ts";
import type { TreeNode } from "../tree/node.ts";
import { addRunning, NO_RUNNING, pastUnknown, seeAlso } from "./parts.ts";
import type { Growing, Handlers, Replay } from "./replay.ts";
import { moveGoods } from "./supply.ts";

/** Every joint as the log begins. */
export function jointsAtStart(replay: Replay): void {
  for (const node of replay.gathered.tree.ofKind("joint")) {
    replay.joints.set(node, {
      node,
      stage: "as_found",
      opened: undefined,
      nipped: undefined,
      tightened: undefined,
      locked: undefined,
      marked: undefined,
      seen: undefined,
      rechecked: undefined,
      sinceTightened: NO_RUNNING,
      sinceRechecked: NO_RUNNING,
      hardware: "as found",
    });
  }
}

export const jointHandlers: Handlers = {
  nipped: (replay, fact) => {
    for (const joint of jointsIn(replay, fact)) {
      // A joint that is only nipped is no longer what it was tightened to.
      Object.assign(joint, {
        tightened: undefined,
        locked: undefined,
        marked: undefined,
        seen: undefined,
        nipped: fact,
      });
      restage(joint);
    }
  },

  torqued: (replay, fact) => {
    for (const joint of jointsIn(replay, fact)) {
      complainOfMissingParts(replay, joint, fact);
      judgeTorque(
        replay,
        joint.node,
        fact.fact.torque,
        fact.fact.gauge && replay.named("gauge", fact.fact.gauge),
        fact,
      );
      judgeAngle(replay, joint.node, fact);
      tighten(replay, joint, fact, fact.fact.newHardware);
    }
  },

  tightened: (replay, fact) => {
    for (const joint of jointsIn(replay, fact)) {
      complainOfMissingParts(replay, joint, fact);
      const byHand = replay.definitions.one(joint.node, "torque")?.record.torque.form === "by hand";
      if (!byHand && isCritical(replay, joint.node)) {
        replay.complainOf(joint.node, "tightened-by-feel", fact.place, { joint: joint.node.path });
      }
      tighten(replay, joint, fact, false);
    }
  },

  rechecked: (replay, fact) => {
    const { torque, moved, gauge } = fact.fact;
    for (const joint of jointsIn(replay, fact)) {
      if (torque !== undefined)
        judgeTorque(replay, joint.node, torque, gauge && replay.named("gauge", gauge), fact);
      joint.rechecked = fact;
      joint.sinceRechecked = NO_RUNNING;
      // A cured bond is broken, a wire or tab has been off: it asks to be done again.
      if (moved)
        Object.assign(joint, {
          locked: undefined,
          marked: undefined,
          seen: undefined,
          tightened: undefined,
          nipped: fact,
        });
      restage(joint);
    }
  },

  locked: (replay, fact) => {
    for (const joint of jointsIn(replay, fact)) {
      const lock = fact.fact.lock ?? replay.definitions.one(joint.node, "lock")?.record.choice ?? "none";
      if (lock !== "threadlocker" && isUndone(replay, joint)) {
        replay.complainOf(joint.node, "locked-before-torqued", fact.place, {
          joint: joint.node.path,
          state: joint.stage,
          lock,
        });
      }
      joint.locked = { lock, fact };
      restage(joint);
    }
  },

  marked: (replay, fact) => {
    for (const joint of jointsIn(replay, fact)) {
      if (isUndone(replay, joint)) {
        replay.complainOf(joint.node, "marked-before-torqued", fact.place, {
          joint: joint.node.path,
          state: joint.stage,
        });
      }
      joint.marked = fact;
      restage(joint);
    }
  },

  seen: (replay, fact) => {
    for (const { node } of replay.targetsOf(fact.fact.what, "joint")) {
      const joint = jointOf(replay, node);
      const doer = joint.tightened?.fact.by;
      if (doer !== undefined && doer === fact.fact.by) {
        replay.complainOf(
          node,
          "seen-by-same",
          fact.place,
          { what: node.path, by: doer },
          seeAlso("done by the same", joint.tightened),
        );
        continue;
      }
      joint.seen = fact;
    }
  },

  loosened: (replay, fact) => {
    for (const joint of jointsIn(replay, fact)) openJoint(replay, joint.node, fact);
  },

  ran: (replay, fact) => {
    for (const { node } of replay.targetsOf([fact.fact.target], "joint")) {
      const joint = jointOf(replay, node);
      joint.sinceTightened = addRunning(joint.sinceTightened, fact.fact);
      joint.sinceRechecked = addRunning(joint.sinceRechecked, fact.fact);
    }
  },
};

/** Opens a joint: whatever was done to it is undone. */
export function openJoint(replay: Replay, node: TreeNode, fact: DatedFact): void {
  const joint = jointOf(replay, node);
  Object.assign(joint, {
    stage: "open",
    opened: fact,
    nipped: undefined,
    tightened: undefined,
    locked: undefined,
    marked: undefined,
    seen: undefined,
    rechecked: undefined,
  } satisfies Partial<JointState>);
  replay.disturb(node, fact);
  replay.opened(node, fact);
}

/** The joints that hold a part. */
export function jointsOf(replay: Replay, part: TreeNode): readonly TreeNode[] {
  return [...replay.joints.keys()].filter((joint) => joinedParts(replay, joint).includes(part));
}

/** A part comes off: its joints open, but for those that are wholly within what comes off as a unit. */
export function breakJoints(
  replay: Replay,
  part: TreeNode,
  fact: DatedFact,
  unit: ReadonlySet<TreeNode> | undefined,
): void {
  for (const joint of jointsOf(replay, part)) {
    const inside = unit !== undefined && joinedParts(replay, joint).every((joined) => unit.has(joined));
    if (!inside && replay.joints.get(joint)?.stage !== "open") openJoint(replay, joint, fact);
  }
}

function tighten(
  replay: Replay,
  joint: Growing<JointState>,
  fact: DatedFact<"torqued" | "tightened">,
  newHardware: boolean,
): void {
  const reopened = joint.opened !== undefined && joint.tightened === undefined;
  if (newHardware) joint.hardware = "new";
  else if (reopened || joint.hardware === "as found") complainOfReuse(replay, joint, fact);
  if (reopened || newHardware) spendHardware(replay, joint.node, fact);
  joint.tightened = fact;
  joint.seen = undefined;
  joint.sinceTightened = NO_RUNNING;
  joint.sinceRechecked = NO_RUNNING;
  joint.rechecked = undefined;
  if (newHardware || reopened) joint.hardware = "used";
  restage(joint);
}

/** A self-locking nut that has been off is not the nut it was. */
function complainOfReuse(replay: Replay, joint: JointState, fact: DatedFact): void {
  if (joint.opened === undefined) return;
  const nut = replay.definitions.one(joint.node, "nut")?.record.nut;
  const selfLocking =
    nut?.form === "self_locking" ||
    replay.definitions.one(joint.node, "lock")?.record.choice === "self_locking";
  if (selfLocking) {
    replay.complainOf(
      joint.node,
      "self-locking-reused",
      fact.place,
      { joint: joint.node.path },
      seeAlso("undone", joint.opened),
    );
  }
}

function spendHardware(replay: Replay, joint: TreeNode, fact: DatedFact): void {
  for (const { record, turns } of replay.definitions.all(joint, "uses")) {
    for (const { count, reference } of record.items) {
      const part = replay.names.one(reference, ["part"], turns);
      if (part !== undefined) moveGoods(replay, part, -count, fact);
    }
  }
}

function complainOfMissingParts(replay: Replay, joint: JointState, fact: DatedFact): void {
  for (const part of joinedParts(replay, joint.node)) {
    const state = replay.parts.get(part);
    if (state === undefined || state.place === "on" || state.place === "trial") continue;
    const data = {
      joint: joint.node.path,
      part: part.path,
      place: state.missing ? ("missing" as const) : state.place,
    };
    replay.complainOf(
      joint.node,
      "torqued-before-fitted",
      fact.place,
      data,
      seeAlso(state.place, state.placed),
    );
  }
}

function judgeTorque(
  replay: Replay,
  joint: TreeNode,
  torque: Quantity,
  gauge: NamedDefinition | undefined,
  fact: DatedFact<"torqued" | "rechecked">,
): void {
  for (const doubt of gauge === undefined ? [] : gaugeDoubts(replay, gauge, torque))
    doubt(replay, joint, fact.place);
  const limits = torqueLimits(replay, joint);
  if (limits !== undefined)
    complainOfTorque(replay, joint, torque, limits, uncertaintyFor(undefined, gauge, torque), fact);
}

function judgeAngle(replay: Replay, joint: TreeNode, fact: DatedFact<"torqued">): void {
  const limits = angleLimits(replay, joint);
  const angle = fact.fact.then;
  if (limits !== undefined && angle !== undefined)
    complainOfTorque(replay, joint, angle, limits, undefined, fact);
}

function complainOfTorque(
  replay: Replay,
  joint: TreeNode,
  torque: Quantity,
  limits: Limits,
  uncertainty: Quantity | undefined,
  fact: DatedFact,
): void {
  const exact = judge([torque], undefined, limits, 0);
  if (isFault(exact)) return;
  const doubtful = judge([torque], uncertainty, limits, 0);
  const outside = exact.verdict === "outside";
  if (!outside && (isFault(doubtful) || doubtful.verdict !== "uncertain")) return;
  const data = {
    what: joint.path,
    characteristic: "torque",
    reading: torque,
    limit: exact.limit,
    side: exact.side,
    by: exact.excess ?? exact.margin,
    uncertainty,
    readings: 1,
    spread: undefined,
    gaugeDoubt: !outside,
  };
  const defined = replay.definitions.one(joint, "torque");
  const limitPlace = defined && { place: { site: defined.site, ...defined.record.at }, role: "torque" };
  replay.complainOf(joint, "torque-outside", fact.place, data, {
    seeAlso: limitPlace === undefined ? [] : [limitPlace],
  });
}

/** Not torqued, nor as found on a vehicle whose past is known. */
function isUndone(replay: Replay, { tightened, stage }: JointState): boolean {
  return tightened === undefined && (stage !== "as_found" || pastUnknown(replay));
}

function jointsIn(
  replay: Replay,
  fact: DatedFact<"nipped" | "torqued" | "tightened" | "rechecked" | "locked" | "marked" | "loosened">,
): Growing<JointState>[] {
  return replay.targetsOf(fact.fact.what, "joint").map(({ node }) => jointOf(replay, node));
}

/** The state of a joint; every joint has one from the start. */
export function jointOf(replay: Replay, node: TreeNode): Growing<JointState> {
  const joint = replay.joints.get(node);
  if (joint === undefined) throw new Error(`no state for the joint ${node.path}`);
  return joint;
}

/** The stage is the furthest of what has been done and not undone. */
function restage(joint: Growing<JointState>): void {
  joint.stage = stageOf(joint);
}

function stageOf({ marked, locked, tightened, nipped, opened }: JointState): JointStage {
  if (tightened !== undefined) {
    if (marked !== undefined) return "marked";
    return locked === undefined ? "torqued" : "locked";
  }
  if (nipped !== undefined) return "nipped";
  return opened === undefined ? "as_found" : "open";
}
