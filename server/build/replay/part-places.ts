/** The states of parts while the diary is read: where each is, and what is in it. */
import { leadingDecision } from "../part-decisions.ts";
import type { DatedFact, PartDecision, PartPlace, PartState } from "../states.ts";
import type { TreeNode } from "../tree/node.ts";
import type { Target } from "../tree/resolve.ts";
import { breakJoints } from "./joint-opening.ts";
import type { Replay } from "./replay.ts";
import type { Growing } from "./state-table.ts";

/** The state of a part; every part has one from the start. */
export function partOf(replay: Replay, node: TreeNode): Growing<PartState> {
  const part = replay.parts.get(node);
  if (part === undefined) throw new Error(`no state for the part ${node.path}`);
  return part;
}

export function isOn({ place }: Pick<PartState, "place">): boolean {
  return place === "on" || place === "trial";
}

/** The decisions that stand about a part from now on. */
export function decide(part: Growing<PartState>, decisions: readonly PartDecision[]): void {
  part.decisions = decisions;
  part.decision = leadingDecision(decisions);
}

/** A part comes off, with what is in it; the joints to the rest open, and within what comes off as a unit stay. */
export function takeOff(
  replay: Replay,
  part: Growing<PartState>,
  fact: DatedFact,
  { place, unit = new Set() }: { readonly place: PartPlace; readonly unit?: ReadonlySet<TreeNode> },
): void {
  const scrapped = part.decision?.decision === "scrap" && part.decision.settled === undefined;
  part.place = place === "off" && scrapped ? "gone" : place;
  part.placed = fact;
  replay.disturb(part.node, fact);
  releaseFromJoints(replay, part.node, fact, unit);
}

/** Opens the joints that hold a part, and those that hold what is in it, to anything that does not come along. */
export function releaseFromJoints(
  replay: Replay,
  node: TreeNode,
  fact: DatedFact,
  unit: ReadonlySet<TreeNode> = new Set(),
): void {
  breakJoints(replay, node, fact, unit);
  const along = new Set([...unit, node]);
  for (const inner of takenAlong(replay, node)) breakJoints(replay, inner.node, fact, along);
}

/** The parts that are in a part: they come off with it and stay in it. */
export function* takenAlong(replay: Replay, { children }: TreeNode): Generator<Growing<PartState>> {
  for (const child of children) {
    const part = replay.parts.get(child);
    if (part === undefined) yield* takenAlong(replay, child);
    else if (isOn(part)) {
      yield part;
      yield* takenAlong(replay, child);
    }
  }
}

/** Through an assembly a part inside another part is not meant: it goes where its own part goes, and stays in it. */
export function topmost(targets: readonly Target[]): readonly Target[] {
  return targets.filter(({ node, through }) => through === undefined || !insidePart(node, through));
}

function insidePart(node: TreeNode, through: TreeNode): boolean {
  for (let above = node.parent; above !== undefined && above !== through; above = above.parent) {
    if (above.kind === "part") return true;
  }
  return false;
}
