/** The nuts, pins and washers of joints: spent when a joint that was undone is done up, and not to be used again. */
import { isSelfLocking } from "../joint-lock.ts";
import type { DatedFact, JointHardware, JointState } from "../states.ts";
import type { TreeNode } from "../tree/node.ts";
import { complainUntil, overtake } from "./joint-complaints.ts";
import type { Replay } from "./replay.ts";
import { seeAlso } from "./see-also.ts";
import type { Growing } from "./state-table.ts";
import { inHandOf, moveGoods } from "./supply.ts";

/** A joint is done up: on new hardware where that is said, else on what is there. */
export function renewHardware(
  replay: Replay,
  joint: Growing<JointState>,
  fact: DatedFact,
  saidNew: boolean,
): void {
  const { undone } = joint;
  if (undone === undefined && !saidNew) return;
  if (saidNew || isChangeOfNut(undone)) {
    overtake(replay, joint.node, "renewed");
    joint.hardware = "new";
  } else joint.hardware = reuse(replay, joint, fact);
  for (const { part, count } of hardwareOf(replay, joint.node)) moveGoods(replay, part, -count, fact);
  joint.undone = undefined;
}

/** One mistake is one complaint: a self-locking nut first, else the first of its single-use hardware that is not in hand. */
function reuse(replay: Replay, { node, undone }: JointState, fact: DatedFact): JointHardware {
  const extras = seeAlso("undone", undone);
  if (isSelfLocking(replay, node)) {
    complainUntil(replay, "renewed", node, "self-locking-reused", fact.place, { joint: node.path }, extras);
    return "self-locking used again";
  }
  const hardware = hardwareOf(replay, node);
  const short = hardware.find(({ part, count }) => inHandOf(replay, part) < count);
  if (short === undefined) return hardware.length > 0 ? "new" : "used again";
  const { part, count } = short;
  const data = { what: part.path, joint: node.path, needed: count, inHand: inHandOf(replay, part) };
  complainUntil(replay, "renewed", node, "single-use-refitted", fact.place, data, extras);
  return "single-use used again";
}

function hardwareOf(replay: Replay, joint: TreeNode) {
  return replay.definitions.all(joint, "uses").flatMap(({ record, turns }) =>
    record.items.flatMap(({ count, reference }) => {
      const part = replay.names.one(reference, ["part"], turns);
      return part === undefined ? [] : [{ part, count }];
    }),
  );
}

/** Another nut than before is a new one. */
function isChangeOfNut(undone: DatedFact | undefined): boolean {
  return undone?.fact.word === "changed" && undone.fact.record.word === "nut";
}
