/** What goes on: the item that came off, or a new one from the goods in hand; and what speaks against it. */
import { condemnation } from "../condemnation.ts";
import { isCritical } from "../criticality.ts";
import { outsideLimits } from "../judgement.ts";
import { settledBy, toBeReplaced } from "../part-decisions.ts";
import { pastUnknown } from "../past.ts";
import { isSetInFitting } from "../set-in-fitting.ts";
import type { DatedFact, ItemEvent, PartState } from "../states.ts";
import type { Target } from "../tree/resolve.ts";
import { beginItem, countOf, isFromStock, isNewOne, isSingleUse, piecesNeeded } from "./items.ts";
import { breakJoints, endTrial, joinJoints } from "./joint-opening.ts";
import { decide, partOf, takenAlong } from "./part-places.ts";
import type { Replay } from "./replay.ts";
import { seeAlso } from "./see-also.ts";
import type { Growing } from "./state-table.ts";
import { inHandOf, moveGoods } from "./supply.ts";

/** Puts a part on. */
export function putOn(replay: Replay, { node, through }: Target, fact: DatedFact<"fitted">): void {
  const part = partOf(replay, node);
  const { place, placed } = part;
  const { forTrial } = fact.fact;
  const isThere = place === "on" || (place === "trial" && forTrial);
  if (isThere && through !== undefined) return;
  const isNew = isNewOne(replay, part, fact);
  if (isThere) {
    const data = { what: node.path };
    replay.complainOf(node, "fitted-twice", fact.place, data, seeAlso("fitted before", part.placed));
    // That the old one came off was not written down: a new one in its place still is one.
    if (!isNew || toBeReplaced(part.decisions) === undefined) return;
    breakJoints(replay, node, fact);
  } else if (place === "away" && !isNew) {
    const data = { what: node.path, supplier: part.sent?.fact.to.text ?? "" };
    replay.complainOf(node, "fitted-while-away", fact.place, data, seeAlso("sent", part.sent));
  }
  if (isNew) fitNew(replay, part, fact);
  else fitOld(replay, part, fact);
  part.place = forTrial ? "trial" : "on";
  part.placed = fact;
  part.missing = false;
  if (place === "trial") endTrial(replay, node, placed, fact);
  replay.disturb(node, fact);
  if (place !== "trial") joinJoints(replay, node, fact);
}

/** A new one starts: readings, hours, findings and age of the old one stay with the old. */
function fitNew(replay: Replay, part: Growing<PartState>, fact: DatedFact<"fitted">): void {
  const { node, item, placed } = part;
  const old = item.inHand ? (part.earlier.at(-1) ?? item) : item;
  complainOfLack(replay, part, fact);
  const pieces = piecesNeeded(replay, part);
  moveGoods(replay, node, -pieces, fact);
  if (!item.inHand) beginItem(part);
  const { made, expires, batch } = fact.fact;
  part.item = { ...part.item, since: fact, inHand: false, made, expires, batch };
  // With some of the old pieces in it, it is no younger and has run no less than they have.
  if (pieces < countOf(replay, node))
    part.item = {
      ...part.item,
      since: old.since,
      made: old.made,
      expires: old.expires,
      running: old.running,
    };
  decide(part, settledBy(part.decisions, "another fitted", fact));
  for (const inner of takenAlong(replay, node)) {
    // It came in the new one; what was put into it by hand stays what it is.
    if ((inner.placed?.order ?? -1) > (placed?.order ?? -1)) continue;
    beginItem(inner);
    inner.item = { ...inner.item, since: fact };
    decide(inner, settledBy(inner.decisions, "another fitted", fact));
  }
}

function fitOld(replay: Replay, part: Growing<PartState>, fact: DatedFact<"fitted">): void {
  const { node, place } = part;
  if (place === "shelf") {
    complainOfLack(replay, part, fact);
    moveGoods(replay, node, -piecesNeeded(replay, part), fact);
  }
  const { forTrial, made, expires, batch } = fact.fact;
  if (!forTrial && place !== "away") complainOfItem(replay, part, fact);
  part.item = {
    ...part.item,
    since: place === "shelf" ? fact : part.item.since,
    made: made ?? part.item.made,
    expires: expires ?? part.item.expires,
    batch: batch ?? part.item.batch,
  };
  if (!forTrial) decide(part, settledBy(part.decisions, "old one fitted", fact));
}

/** A new one is due, and there is none: nobody has received, bought or made it. */
function complainOfLack(replay: Replay, part: PartState, fact: DatedFact<"fitted">): void {
  const { node, decisions, decision, place, missing } = part;
  const needed = piecesNeeded(replay, part);
  const inHand = inHandOf(replay, node);
  if (inHand >= needed) return;
  const replaced = toBeReplaced(decisions) !== undefined;
  const elsewhere = missing || place === "gone" || place === "shelf";
  if (!replaced && !elsewhere && isSingleUse(replay, node)) {
    const data = { what: node.path, joint: undefined, needed, inHand };
    replay.complainOf(node, "single-use-refitted", fact.place, data);
  } else if (replaced || (elsewhere && !(place === "shelf" && isFromStock(replay, node) && inHand > 0))) {
    const data = { what: node.path, needed, inHand, decision: replaced ? (decision?.decision ?? "") : "" };
    replay.complainOf(
      node,
      "fitted-not-in-hand",
      fact.place,
      data,
      replaced ? seeAlso("decided", decision?.fact) : seeAlso("gone", part.placed),
    );
  }
}

/** What speaks against the item that goes back: the gravest of it. */
function complainOfItem(replay: Replay, part: PartState, fact: DatedFact<"fitted">): void {
  const { node, item } = part;
  const condemned = condemnation(replay, part);
  if (condemned !== undefined) {
    const { why } = condemned;
    const data = { what: node.path, why };
    replay.complainOf(node, "fitted-condemned", fact.place, data, seeAlso(why, condemned.fact));
    return;
  }
  const outside = outsideLimits(replay, item).filter(
    ({ reading }) => !isSetInFitting(replay, node, reading.name),
  );
  for (const { verdict, reading } of outside) {
    const data = {
      what: node.path,
      characteristic: reading.name,
      reading: verdict.reading,
      limit: verdict.limit,
      measured: reading.fact.fact,
    };
    replay.complainOf(node, "fitted-out-of-limit", fact.place, data, seeAlso("measured", reading.fact));
  }
  if (outside.length > 0 || item.since !== undefined || item.events.some(isInspection)) return;
  if (isCritical(replay, node) && pastUnknown(replay))
    replay.complainOf(node, "fitted-not-inspected", fact.place, { what: node.path });
}

/** Somebody looked at it, and said what he found. */
function isInspection(event: ItemEvent): boolean {
  return (
    event.is === "inspected" ||
    event.is === "measured" ||
    (event.is === "found" && event.condition === "good")
  );
}
