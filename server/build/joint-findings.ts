/** What is wrong with joints as they are specified, at the record that says so: in the block, or in `changed:`. */

import { inThreadUnits, loadingOf, reachOf } from "./joint-mechanics.ts";
import { boltOf } from "./joint-torque.ts";
import type { Replay } from "./replay/replay.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";

export function complainOfJoints(replay: Replay): void {
  for (const joint of replay.joints.keys()) {
    complainOfReach(replay, joint);
    complainOfLoad(replay, joint);
  }
}

function complainOfReach(replay: Replay, joint: TreeNode): void {
  const reach = reachOf(replay, joint);
  const bolt = boltOf(replay, joint);
  const place = placeOf(replay, joint, "bolt") ?? placeOf(replay, joint, "stud");
  if (reach === undefined || bolt === undefined || place === undefined) return;
  if (reach.length >= reach.needed - TOLERANCE) return;
  const data = {
    joint: joint.path,
    into: reach.into,
    reach: inThreadUnits(bolt, reach.length),
    needed: inThreadUnits(bolt, reach.needed),
    why: reach.why,
  };
  replay.complainOf(joint, "bolt-too-short", place, data);
}

/** Below a hundredth of a millimetre nothing is short; floats are not exact. */
const TOLERANCE = 1e-5;

/** From 90 % of proof a torque is worth a word (Shigley and Mischke: 90 % for a permanent joint). */
const SHARE_OF_PROOF = 0.9;

function complainOfLoad(replay: Replay, joint: TreeNode): void {
  const loading = loadingOf(replay, joint);
  const place = placeOf(replay, joint, "torque");
  if (loading === undefined || place === undefined) return;
  const share = loading.highest / loading.proof;
  if (share < SHARE_OF_PROOF) return;
  const { torque, strength, friction } = loading;
  replay.complainOf(joint, "torque-over-proof", place, {
    joint: joint.path,
    torque,
    percent: share * 100,
    strength,
    friction,
    over: share > 1,
  });
}

function placeOf(replay: Replay, joint: TreeNode, word: "bolt" | "stud" | "torque"): Place | undefined {
  const sourced: SourcedRecord | undefined = replay.definitions.one(joint, word);
  return sourced && placeAt(sourced.site, sourced.record.at);
}
