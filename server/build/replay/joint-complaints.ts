/**
 * Complaints about the present tightening of a joint. They can be overtaken: by a later figure, by tightening it again,
 * by undoing it. So they are kept until that happens, and said as past; or said as they are once the diary is read.
 */
import type { FindingCode, FindingExtras } from "../finding.ts";
import type { FindingData } from "../finding-data.ts";
import type { Place } from "../source.ts";
import type { TreeNode } from "../tree/node.ts";
import type { Replay } from "./replay.ts";

/** What overtakes a complaint; each of these does so with all that the ones before it overtake. */
const OVERTAKERS = ["checked", "tightened", "renewed", "opened"] as const;
export type Overtaker = (typeof OVERTAKERS)[number];

interface Kept {
  readonly until: Overtaker;
  readonly say: (standing: "current" | "past") => void;
}

const kept = new WeakMap<Replay, Map<TreeNode, readonly Kept[]>>();

/** Keeps a complaint until the joint is checked, tightened, given new hardware or opened again. */
export function complainUntil<C extends FindingCode>(
  replay: Replay,
  until: Overtaker,
  joint: TreeNode,
  code: C,
  place: Place,
  data: FindingData[C],
  extras: FindingExtras = {},
): void {
  const say = (standing: "current" | "past") =>
    replay.complainOf(joint, code, place, data, { ...extras, standing });
  const ofReplay = keptOf(replay);
  ofReplay.set(joint, [...(ofReplay.get(joint) ?? []), { until, say }]);
}

/** What has been overtaken is said as past. */
export function overtake(replay: Replay, joint: TreeNode, by: Overtaker): void {
  const ofReplay = keptOf(replay);
  const reach = OVERTAKERS.indexOf(by);
  const left = (ofReplay.get(joint) ?? []).filter(({ until, say }) => {
    const overtaken = OVERTAKERS.indexOf(until) <= reach;
    if (overtaken) say("past");
    return !overtaken;
  });
  ofReplay.set(joint, left);
}

/** The diary has been read: what nothing has overtaken stands. */
export function settleComplaints(replay: Replay): void {
  for (const complaints of keptOf(replay).values()) for (const { say } of complaints) say("current");
  kept.delete(replay);
}

function keptOf(replay: Replay): Map<TreeNode, readonly Kept[]> {
  const known = kept.get(replay);
  if (known !== undefined) return known;
  const fresh = new Map<TreeNode, readonly Kept[]>();
  kept.set(replay, fresh);
  return fresh;
}
