/** Joints: run up, tightened, locked, marked, seen, loosened and checked again. */
import { isCritical } from "../criticality.ts";
import type { NamedDefinition } from "../definitions.ts";
import { gaugeDoubts } from "../gauge-check.ts";
import { dueRecheck, mayBeRechecked } from "../joint-recheck.ts";
import { stageReached } from "../joint-torque.ts";
import type { FactWord } from "../lowering/fact.ts";
import { pastUnknown } from "../past.ts";
import { addRunning, NO_RUNNING } from "../running.ts";
import type { DatedFact, JointLock, JointState, TorqueReading } from "../states.ts";
import { complainUntil, overtake } from "./joint-complaints.ts";
import { renewHardware } from "./joint-hardware.ts";
import { absentPart, jointOf, openJoint, restage, setByReading } from "./joint-opening.ts";
import { complainOfReading, complainOfTiming } from "./joint-tightening.ts";
import type { Handlers, Replay } from "./replay.ts";
import { seeAlso } from "./see-also.ts";
import type { Growing } from "./state-table.ts";

export const jointHandlers: Handlers = {
  nipped: (replay, fact) => {
    for (const joint of jointsIn(replay, fact)) {
      // What was tight and is only pinched now has been loosened between.
      if (joint.tightened !== undefined) openJoint(replay, joint.node, fact);
      joint.nipped = fact;
      restage(replay, joint);
    }
  },

  torqued: (replay, fact) => {
    const { torque, then: angle, newHardware } = fact.fact;
    const gauge = replay.named("gauge", fact.fact.gauge);
    for (const joint of jointsIn(replay, fact)) {
      const reading = { fact, torque, angle, gauge, doubts: doubtsOf(replay, gauge, fact) };
      if (stageReached(replay, joint.node, torque) !== undefined) {
        if (newHardware) renewHardware(replay, joint, fact, true);
        joint.nipped = fact;
        restage(replay, joint);
        continue;
      }
      tighten(replay, joint, fact, reading, newHardware);
      complainOfReading(replay, joint.node, reading);
    }
  },

  tightened: (replay, fact) => {
    for (const joint of jointsIn(replay, fact)) {
      tighten(replay, joint, fact, undefined, false);
      if (!isCritical(replay, joint.node)) continue;
      const torque = replay.definitions.one(joint.node, "torque")?.record.torque;
      const torqueStated = torque !== undefined && torque.form !== "by hand";
      const data = { joint: joint.node.path, torqueStated };
      complainUntil(replay, "checked", joint.node, "tightened-by-feel", fact.place, data);
    }
  },

  rechecked: (replay, fact) => {
    for (const joint of jointsIn(replay, fact)) recheck(replay, joint, fact);
  },

  locked: (replay, fact) => {
    for (const joint of jointsIn(replay, fact)) lock(replay, joint, fact);
  },

  marked: (replay, fact) => {
    for (const joint of jointsIn(replay, fact)) {
      if (!mayBeFinished(replay, joint)) {
        replay.complainOf(joint.node, "marked-before-torqued", fact.place, {
          joint: joint.node.path,
          state: joint.stage,
        });
      }
      joint.marked = fact;
      restage(replay, joint);
    }
  },

  seen: (replay, fact) => {
    for (const { node } of replay.targetsOf(fact.fact.what, "joint")) {
      const joint = jointOf(replay, node);
      const same = [joint.tightened, joint.locked?.fact].find((done) => isSame(done?.fact.by, fact.fact.by));
      if (same === undefined) {
        joint.seen = fact;
        joint.seenBySame = undefined;
        continue;
      }
      const data = { what: node.path, by: fact.fact.by ?? "" };
      replay.complainOf(node, "seen-by-same", fact.place, data, seeAlso("done by the same", same));
      joint.seenBySame = fact;
    }
  },

  loosened: (replay, fact) => {
    for (const joint of jointsIn(replay, fact)) openJoint(replay, joint.node, fact);
  },

  changed: (replay, fact) => {
    if (!REPLACED.has(fact.fact.record.word)) return;
    for (const { node } of replay.targetsOf([fact.fact.target], "joint")) {
      const joint = jointOf(replay, node);
      // The changes of a day take effect together: what was tightened on that day was so with them.
      const before =
        joint.tightened === undefined ? joint.stage === "as_found" : joint.tightened.date < fact.date;
      if (before) openJoint(replay, node, fact);
    }
  },

  ran: (replay, fact) => {
    for (const { node } of replay.targetsOf([fact.fact.target], "joint")) {
      if (!mayBeRechecked(replay, node)) continue;
      const joint = jointOf(replay, node);
      joint.sinceTightened = addRunning(joint.sinceTightened, fact.fact);
      joint.sinceRechecked = addRunning(joint.sinceRechecked, fact.fact);
      if (joint.recheckDue === undefined && dueRecheck(replay, joint) !== undefined) joint.recheckDue = fact;
    }
  },
};

/** Records whose change means that the joint was undone: another bolt, nut or washer, other parts between them. */
const REPLACED: ReadonlySet<string> = new Set(["joins", "bolt", "stud", "nut", "washers", "grip"]);

function tighten(
  replay: Replay,
  joint: Growing<JointState>,
  fact: DatedFact<"torqued" | "tightened">,
  reading: TorqueReading | undefined,
  newHardware: boolean,
): void {
  complainOfMissingPart(replay, joint, fact);
  overtake(replay, joint.node, "tightened");
  complainOfTiming(replay, joint.node, fact);
  const again = joint.tightened !== undefined && !newHardware;
  renewHardware(replay, joint, fact, newHardware);
  if (again) markChecked(joint, fact);
  else
    Object.assign(joint, {
      sinceTightened: NO_RUNNING,
      sinceRechecked: NO_RUNNING,
      rechecked: undefined,
      recheckDue: undefined,
    } satisfies Partial<JointState>);
  joint.tightened = fact;
  joint.reading = reading;
  joint.without = absentPart(replay, joint.node)?.part;
  joint.seen = undefined;
  joint.seenBySame = undefined;
  if (joint.locked?.lock === "threadlocker" && joint.locked.fact.date === fact.date)
    joint.locked = { ...joint.locked, holds: true };
  restage(replay, joint);
}

/** Checked again: held, to a figure or without one; or moved, and then it is to be done again. */
function recheck(replay: Replay, joint: Growing<JointState>, fact: DatedFact<"rechecked">): void {
  const { torque, moved } = fact.fact;
  const gauge = replay.named("gauge", fact.fact.gauge);
  markChecked(joint, fact);
  if (moved) {
    overtake(replay, joint.node, "tightened");
    // A cured bond is broken, a wire or tab has been off.
    Object.assign(joint, {
      nipped: fact,
      tightened: undefined,
      reading: undefined,
      locked: undefined,
      marked: undefined,
      seen: undefined,
      seenBySame: undefined,
    } satisfies Partial<JointState>);
  } else if (torque !== undefined && (joint.tightened !== undefined || joint.stage === "as_found")) {
    const reading = {
      fact,
      torque,
      angle: joint.reading?.angle,
      gauge,
      doubts: doubtsOf(replay, gauge, fact),
    };
    overtake(replay, joint.node, "checked");
    joint.tightened ??= fact;
    joint.reading = reading;
    complainOfReading(replay, joint.node, reading);
  }
  restage(replay, joint);
}

function markChecked(
  joint: Growing<JointState>,
  fact: DatedFact<"rechecked" | "torqued" | "tightened">,
): void {
  joint.rechecked = fact;
  joint.sinceRechecked = NO_RUNNING;
  joint.recheckDue = undefined;
}

function lock(replay: Replay, joint: Growing<JointState>, fact: DatedFact<"locked">): void {
  const asked = replay.definitions.one(joint.node, "lock")?.record.choice;
  const { lock = asked ?? "none" } = fact.fact;
  if (lock !== "threadlocker" && !mayBeFinished(replay, joint)) {
    replay.complainOf(joint.node, "locked-before-torqued", fact.place, {
      joint: joint.node.path,
      state: joint.stage,
      lock,
    });
  }
  const setBy = replay.definitions.one(joint.node, "set_by") !== undefined;
  const holds = lock !== "threadlocker" || setBy || joint.tightened?.date === fact.date;
  const before: JointLock | undefined = joint.locked;
  // Said again later, threadlocker that went on with the torque is still there.
  if (!(lock === "threadlocker" && !holds && before?.lock === lock && before.holds))
    joint.locked = { lock, fact, holds };
  if (setBy) renewHardware(replay, joint, fact, false);
  joint.seen = undefined;
  joint.seenBySame = undefined;
  restage(replay, joint);
}

/** Whether lock and mark are in order: it is tightened, set by a measurement, or as found on a vehicle whose past is known. */
function mayBeFinished(replay: Replay, joint: JointState): boolean {
  if (joint.tightened !== undefined) return true;
  if (joint.stage === "as_found" && !pastUnknown(replay)) return true;
  return (
    replay.definitions.one(joint.node, "set_by") !== undefined && setByReading(replay, joint) !== undefined
  );
}

function doubtsOf(
  replay: Replay,
  gauge: NamedDefinition | undefined,
  { fact }: DatedFact<"torqued" | "rechecked">,
): TorqueReading["doubts"] {
  return gauge === undefined || fact.torque === undefined ? [] : gaugeDoubts(replay, gauge, fact.torque);
}

function complainOfMissingPart(
  replay: Replay,
  joint: JointState,
  fact: DatedFact<"torqued" | "tightened">,
): void {
  const absent = absentPart(replay, joint.node);
  if (absent === undefined) return;
  const { part, state } = absent;
  const place = state.missing ? ("missing" as const) : state.place;
  const data = { joint: joint.node.path, part: part.path, place };
  replay.complainOf(joint.node, "torqued-before-fitted", fact.place, data, seeAlso(place, state.placed));
}

function jointsIn<W extends FactWord>(
  replay: Replay,
  { fact }: DatedFact<W> & { readonly fact: { readonly what: Parameters<Replay["targetsOf"]>[0] } },
): Growing<JointState>[] {
  return replay.targetsOf(fact.what, "joint").map(({ node }) => jointOf(replay, node));
}

/** Whether two people are one; of one who is not named nothing is known. */
function isSame(a: string | undefined, b: string | undefined): boolean {
  return a !== undefined && b !== undefined && a.trim().toLowerCase() === b.trim().toLowerCase();
}
