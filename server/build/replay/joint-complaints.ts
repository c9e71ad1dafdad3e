/**
 * Complaints about the present tightening of a joint. They can be overtaken: by a later figure, by tightening it again,
 * by undoing it. So they are kept until that happens, and said as past; or said as they are once the diary is read.
 */
import type { FindingCode, FindingExtras } from "../finding.ts";
import type { FindingData } from "../finding-data.ts";
import type { Place } from "../source.ts";
import type { TreeNode } from "../tree/node.ts";
import type { Overtaker, Replay, WaitingComplaint } from "./replay.ts";

const OVERTAKERS: readonly Overtaker[] = ["checked", "tightened", "renewed", "opened"];

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
  const say: WaitingComplaint["say"] = (saying, standing) =>
    saying.complainOf(joint, code, place, data, { ...extras, standing });
  replay.waiting.set(joint, [...(replay.waiting.get(joint) ?? []), { until, say }]);
}

/** What has been overtaken is said as past. */
export function overtake(replay: Replay, joint: TreeNode, by: Overtaker): void {
  const reach = OVERTAKERS.indexOf(by);
  const left = (replay.waiting.get(joint) ?? []).filter(({ until, say }) => {
    const overtaken = OVERTAKERS.indexOf(until) <= reach;
    if (overtaken) say(replay, "past");
    return !overtaken;
  });
  replay.waiting.set(joint, left);
}

/** The diary has been read: what nothing has overtaken stands. */
export function settleComplaints(replay: Replay): void {
  for (const complaints of replay.waiting.values()) for (const { say } of complaints) say(replay, "current");
}
