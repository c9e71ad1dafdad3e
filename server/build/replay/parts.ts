/** Parts: where each is, which item is in its place, what was found and decided. */
import { condemnation } from "../condemnation.ts";
import { isCritical } from "../criticality.ts";
import { outsideLimits } from "../judgement.ts";
import { pastUnknown } from "../past.ts";
import { addRunning, NO_RUNNING } from "../running.ts";
import { isSetInFitting } from "../set-in-fitting.ts";
import type { Standing } from "../standing.ts";
import type { DatedFact, Item, ItemEvent, PartPlace, PartState } from "../states.ts";
import type { TreeNode } from "../tree/node.ts";
import { below } from "../tree/node.ts";
import type { Target } from "../tree/resolve.ts";
import { breakJoints, endTrial, joinJoints, openJoint } from "./joint-opening.ts";
import type { Growing, Handlers, Replay } from "./replay.ts";
import { seeAlso } from "./see-also.ts";
import { inHandOf, moveGoods } from "./supply.ts";

/** Every part as the log begins. */
export function partsAtStart(replay: Replay): void {
  for (const node of replay.gathered.tree.ofKind("part")) {
    const found = replay.definitions.one(node, "as_found")?.record.choice ?? "on";
    const places = { on: "on", missing: "gone", loose: "off", shelf: "shelf" } as const satisfies Record<
      string,
      PartPlace
    >;
    const item: Item = {
      number: 1,
      since: undefined,
      made: replay.definitions.one(node, "made")?.record.date,
      expires: replay.definitions.one(node, "expires")?.record.date,
      batch: undefined,
      readings: [],
      events: [],
      serviced: undefined,
      running: NO_RUNNING,
    };
    replay.parts.set(node, {
      node,
      place: places[found],
      placed: undefined,
      missing: found === "missing",
      item,
      earlier: [],
      decision: undefined,
      sent: undefined,
      tags: [],
    });
  }
}

export const partHandlers: Handlers = {
  removed: (replay, fact) => {
    const targets = topmost(replay.partsOf(fact.fact.what));
    const together = new Set(targets.map(({ node }) => node));
    for (const { node, through } of targets) {
      const part = partOf(replay, node);
      if (part.place === "on" || part.place === "trial") takeOff(replay, part, fact, "off");
      else if (through !== undefined) continue;
      else {
        const data = { what: node.path, place: part.place };
        replay.complainOf(node, "removed-twice", fact.place, data, seeAlso("removed before", part.placed));
      }
      breakJoints(replay, node, fact, fact.fact.asUnit ? together : undefined);
    }
  },

  stripped: (replay, fact) => {
    for (const { node } of topmost(replay.partsOf(fact.fact.what))) {
      for (const inner of below(node)) {
        const part = replay.parts.get(inner);
        if (part !== undefined && (part.place === "on" || part.place === "trial")) {
          takeOff(replay, part, fact, "off");
          breakJoints(replay, inner, fact);
        }
        if (inner.kind === "joint") openJoint(replay, inner, fact);
      }
      replay.disturb(node, fact);
    }
  },

  fitted: (replay, fact) => {
    for (const target of topmost(replay.partsOf(fact.fact.what))) putOn(replay, target, fact);
  },

  sent: (replay, fact) => {
    for (const { node } of topmost(replay.partsOf(fact.fact.what))) {
      const part = partOf(replay, node);
      if (part.place === "on" || part.place === "trial") breakJoints(replay, node, fact);
      takeOff(replay, part, fact, "away");
      part.sent = fact;
    }
  },

  back: (replay, fact) => {
    for (const { node, through } of topmost(replay.partsOf(fact.fact.what))) {
      const part = partOf(replay, node);
      if (part.place !== "away") {
        if (through === undefined)
          replay.complainOf(node, "back-never-sent", fact.place, { what: node.path });
        continue;
      }
      part.place = "off";
      part.placed = fact;
      settle(part, fact);
      record(part, { is: "back", fact });
    }
  },

  inspected: (replay, fact) => {
    for (const { node } of replay.partsOf(fact.fact.what)) {
      record(partOf(replay, node), { is: "inspected", method: fact.fact.method, fact });
    }
  },

  found: (replay, fact) => {
    for (const { node } of replay.partsOf(fact.fact.what)) {
      const part = partOf(replay, node);
      for (const { condition, at } of fact.fact.conditions) {
        record(part, { is: "found", condition, place: replay.placeIn(fact, at), fact });
        if (condition !== "missing") continue;
        if (part.place === "on" || part.place === "trial") breakJoints(replay, node, fact);
        Object.assign(part, { place: "gone", placed: fact, missing: true });
      }
    }
  },

  decided: (replay, fact) => {
    for (const { count, stated, reference } of fact.fact.items) {
      for (const { node } of replay.partsOf([reference])) {
        const part = partOf(replay, node);
        const whole = countOf(replay, node);
        const { decision } = fact.fact;
        part.decision = { decision, count: stated ? count : whole, fact, settled: undefined };
        record(part, { is: "decided", decision, fact });
        if (decision === "scrap" && part.place === "off") part.place = "gone";
      }
    }
  },

  reconditioned: (replay, fact) => {
    for (const { node } of replay.partsOf(fact.fact.what)) {
      const part = partOf(replay, node);
      const kit = replay.definitions.one(node, "kit");
      const kitNode = kit && replay.names.one(kit.record.reference, ["part"], kit.turns);
      const needed = part.decision?.decision === "recondition" ? part.decision.count : countOf(replay, node);
      const kitInHand = kitNode === undefined || inHandOf(replay, kitNode) >= needed;
      if (kitNode !== undefined) moveGoods(replay, kitNode, -needed, fact);
      record(part, { is: "reconditioned", kitInHand, fact });
      settle(part, fact);
    }
  },

  repaired: (replay, fact) => {
    for (const { node } of replay.partsOf(fact.fact.what)) {
      const part = partOf(replay, node);
      record(part, { is: "repaired", fact });
      settle(part, fact);
    }
  },

  tagged: (replay, fact) => {
    for (const { node } of replay.partsOf(fact.fact.what)) {
      const part = partOf(replay, node);
      part.tags = [...part.tags, fact];
    }
  },

  serviced: (replay, fact) => {
    for (const { node } of replay.partsOf(fact.fact.what)) {
      const part = partOf(replay, node);
      part.item = { ...part.item, serviced: fact };
    }
  },

  seen: (replay, fact) => {
    for (const { node } of replay.partsOf(fact.fact.what)) record(partOf(replay, node), { is: "seen", fact });
  },

  ran: (replay, fact) => {
    const { target, hours, distance, runs } = fact.fact;
    for (const { node } of replay.partsOf([target])) {
      const part = partOf(replay, node);
      if (part.place === "on" || part.place === "trial") {
        part.item = { ...part.item, running: addRunning(part.item.running, { hours, distance, runs }) };
      }
    }
  },
};

/** Puts a part on; decides whether the same item goes back or a new one from the goods in hand. */
function putOn(replay: Replay, { node, through }: Target, fact: DatedFact<"fitted">): void {
  const part = partOf(replay, node);
  const { forTrial } = fact.fact;
  if (part.place === "on" || (part.place === "trial" && forTrial)) {
    if (through === undefined) {
      replay.complainOf(
        node,
        "fitted-twice",
        fact.place,
        { what: node.path },
        seeAlso("fitted before", part.placed),
      );
    }
    return;
  }
  const { place, placed } = part;
  if (place === "away") {
    const supplier = part.sent?.fact.to.text ?? "";
    const data = { what: node.path, supplier };
    replay.complainOf(node, "fitted-while-away", fact.place, data, seeAlso("sent", part.sent));
  }
  if (takesNewItem(replay, part, fact)) startItem(replay, part, fact);
  else if (!forTrial && place !== "away") checkOldItem(replay, part, fact);
  part.place = forTrial ? "trial" : "on";
  part.placed = fact;
  part.missing = false;
  if (place === "trial") endTrial(replay, node, placed, fact);
  replay.disturb(node, fact);
  if (place !== "trial") joinJoints(replay, node, fact);
}

const REPLACED: ReadonlySet<string> = new Set(["renew", "make", "scrap"]);

/** Whether what goes on is a new one. What is only tried may be the old one as long as no new one is in hand. */
function takesNewItem(
  replay: Replay,
  { node, decision, missing, place }: PartState,
  fact: DatedFact<"fitted">,
): boolean {
  const { made, expires, batch, forTrial } = fact.fact;
  if (made !== undefined || expires !== undefined || batch !== undefined) return true;
  if (missing || place === "gone" || place === "shelf") return true;
  const replaced =
    decision !== undefined && decision.settled === undefined && REPLACED.has(decision.decision);
  // What was tried goes on for good without having been off.
  const singleUse = place !== "trial" && replay.definitions.one(node, "single_use")?.record.yes === true;
  return (
    (replaced || singleUse) && (!forTrial || inHandOf(replay, node) >= neededOf(replay, { node, decision }))
  );
}

function neededOf(replay: Replay, { node, decision }: Pick<PartState, "node" | "decision">): number {
  return decision === undefined || decision.settled !== undefined ? countOf(replay, node) : decision.count;
}

function startItem(replay: Replay, part: Growing<PartState>, fact: DatedFact<"fitted">): void {
  const { node } = part;
  const needed = neededOf(replay, part);
  const inHand = inHandOf(replay, node);
  if (inHand < needed) {
    const singleUse = replay.definitions.one(node, "single_use")?.record.yes === true;
    const decision = part.decision?.decision ?? "";
    if (singleUse && !REPLACED.has(decision))
      replay.complainOf(node, "single-use-refitted", fact.place, {
        what: node.path,
        joint: undefined,
        needed,
        inHand,
      });
    else
      replay.complainOf(
        node,
        "fitted-not-in-hand",
        fact.place,
        { what: node.path, needed, inHand, decision },
        seeAlso("decided", part.decision?.fact),
      );
  }
  moveGoods(replay, node, -needed, fact);
  part.earlier = [...part.earlier, part.item];
  part.item = {
    number: part.item.number + 1,
    since: fact,
    made: fact.fact.made,
    expires: fact.fact.expires,
    batch: fact.fact.batch,
    readings: [],
    events: [],
    serviced: undefined,
    running: NO_RUNNING,
  };
  settle(part, fact);
}

/** What speaks against the item that goes back: the gravest of it. */
function checkOldItem(replay: Replay, part: PartState, fact: DatedFact<"fitted">): void {
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
      measured: reading.fact,
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

function takeOff(replay: Replay, part: Growing<PartState>, fact: DatedFact, place: PartPlace): void {
  part.place = place === "off" && part.decision?.decision === "scrap" ? "gone" : place;
  part.placed = fact;
  replay.disturb(part.node, fact);
}

/** Carried out: the decision no longer asks for anything. */
function settle(part: Growing<PartState>, fact: DatedFact): void {
  if (part.decision !== undefined) part.decision = { ...part.decision, settled: fact };
}

export function record(part: Growing<PartState>, event: ItemEvent): void {
  part.item = { ...part.item, events: [...part.item.events, event] };
}

/** The state of a part; every part has one from the start. */
export function partOf(replay: Replay, node: TreeNode): Growing<PartState> {
  const part = replay.parts.get(node);
  if (part === undefined) throw new Error(`no state for the part ${node.path}`);
  return part;
}

/** How many of a part are on the vehicle. */
export function countOf({ definitions }: Pick<Standing, "definitions">, node: TreeNode): number {
  return definitions.one(node, "count")?.record.count ?? 1;
}

/** Through an assembly a part inside another part is not meant: it goes where its own part goes, and stays in it. */
function topmost(targets: readonly Target[]): readonly Target[] {
  return targets.filter(({ node, through }) => through === undefined || !insidePart(node, through));
}

function insidePart(node: TreeNode, through: TreeNode): boolean {
  for (let above = node.parent; above !== undefined && above !== through; above = above.parent) {
    if (above.kind === "part") return true;
  }
  return false;
}
