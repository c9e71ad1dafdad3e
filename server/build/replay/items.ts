/** The items that stand in the place of a part, one after the other: the old one, and the new ones that follow it. */
import { condemnation } from "../condemnation.ts";
import { keepsTheOld, toBeReplaced } from "../part-decisions.ts";
import { NO_RUNNING } from "../running.ts";
import type { Standing } from "../standing.ts";
import type { DatedFact, Item, ItemEvent, PartState } from "../states.ts";
import type { TreeNode } from "../tree/node.ts";
import type { Replay } from "./replay.ts";
import type { Growing } from "./state-table.ts";

/** The item at the start of the log. */
export function firstItem({ definitions }: Pick<Standing, "definitions">, node: TreeNode): Item {
  return {
    ...fresh(1),
    made: definitions.one(node, "made")?.record.date,
    expires: definitions.one(node, "expires")?.record.date,
  };
}

/** An item of which nothing is known. */
function fresh(number: number): Item {
  return {
    number,
    since: undefined,
    inHand: false,
    made: undefined,
    expires: undefined,
    batch: undefined,
    readings: [],
    events: [],
    serviced: undefined,
    running: NO_RUNNING,
  };
}

/** What happened to the item that is in question. */
export function record(part: Growing<PartState>, event: ItemEvent): void {
  // Joined, not spread: a spread leaves room for more, and these lists only ever give way to longer ones.
  part.item = { ...part.item, events: part.item.events.concat(event) };
}

/** Another item takes the place of the one before it, with nothing known of it. */
export function beginItem(part: Growing<PartState>): void {
  part.earlier = [...part.earlier, part.item];
  part.item = fresh(part.earlier.length + 1);
}

/**
 * What is measured, found or inspected while the old one is off to be replaced and new ones are in hand is said of the
 * new one: nobody measures what he throws away. It begins then, and is fitted later.
 */
export function beginItemInHand(replay: Replay, part: Growing<PartState>): void {
  const { node, place, item } = part;
  if (place === "on" || place === "trial" || item.inHand) return;
  if (inHandOf(replay, node) < 1 || !isToBeReplaced(replay, part)) return;
  beginItem(part);
  part.item = { ...part.item, inHand: true };
}

/** A new one that was in hand is not fit for use: the old one is in question again. */
export function rejectItemInHand(part: Growing<PartState>): void {
  const old = part.earlier.at(-1);
  if (!part.item.inHand || old === undefined) return;
  part.earlier = [...part.earlier.slice(0, -1), part.item];
  part.item = old;
}

/** Whether another one goes on in the place of the item that is off. */
function isToBeReplaced(replay: Replay, part: PartState): boolean {
  const { node, decisions, place, missing } = part;
  if (toBeReplaced(decisions) !== undefined) return true;
  if (missing || place === "gone" || (place === "shelf" && !isFromStock(replay, node))) return true;
  if (place === "off" && isSingleUse(replay, node) && part.placed !== undefined) return true;
  return condemnation(replay, part) !== undefined;
}

/** Goods of the stock at the start are the item that the block describes. */
export function isFromStock({ definitions }: Pick<Standing, "definitions">, node: TreeNode): boolean {
  return (definitions.one(node, "stock")?.record.count ?? 0) > 0;
}

export function isSingleUse({ definitions }: Pick<Standing, "definitions">, node: TreeNode): boolean {
  return definitions.one(node, "single_use")?.record.yes === true;
}

/** How many of a part are on the vehicle. */
export function countOf({ definitions }: Pick<Standing, "definitions">, node: TreeNode): number {
  return definitions.one(node, "count")?.record.count ?? 1;
}

function inHandOf({ supply }: Pick<Standing, "supply">, node: TreeNode): number {
  return supply.get(node)?.inHand ?? 0;
}

/** How many go on, where new ones do. */
export function piecesNeeded(replay: Pick<Standing, "definitions">, { node, decisions }: PartState): number {
  return toBeReplaced(decisions) ?? countOf(replay, node);
}

/** Whether what is fitted is a new one from the goods in hand (or should have been), and not the old one. */
export function isNewOne(replay: Replay, part: PartState, { fact }: DatedFact<"fitted">): boolean {
  const { node, decisions, place, placed, missing, item } = part;
  const enough = inHandOf(replay, node) >= piecesNeeded(replay, part);
  if (missing || place === "gone") return true;
  if (place === "shelf") return !isFromStock(replay, node);
  // What is only tried may be the old one, as long as no new one is in hand.
  const mayBeOld = fact.forTrial && !enough;
  if (toBeReplaced(decisions) !== undefined) return !mayBeOld;
  // What was tried goes on for good without having been off; but an old one of what serves only once does not.
  const triedItself = place === "trial" && (item.since === placed || !isSingleUse(replay, node));
  if (triedItself) return false;
  if (isSingleUse(replay, node)) return !mayBeOld;
  const condemned = condemnation(replay, part) !== undefined;
  const stated = fact.made !== undefined || fact.expires !== undefined || fact.batch !== undefined;
  if (condemned || stated) return enough || !condemned;
  return acquiredFor(replay, part) && !isKept(part);
}

/** Enough of what was received, bought or made is in hand, and above the level that is kept on the shelf. */
function acquiredFor(replay: Replay, part: PartState): boolean {
  const { node } = part;
  const acquired = replay.supply.get(node)?.acquired ?? 0;
  const keep = replay.definitions.one(node, "keep")?.record.count ?? 0;
  const needed = piecesNeeded(replay, part);
  return acquired >= needed && inHandOf(replay, node) - keep >= needed;
}

/** The old one was decided to go on, or worked on since it came off. */
function isKept({ decisions, item, placed }: PartState): boolean {
  if (keepsTheOld(decisions)) return true;
  const since = placed?.order ?? -1;
  return item.events.some(
    ({ is, fact }) => fact.order >= since && (is === "back" || is === "repaired" || is === "reconditioned"),
  );
}
