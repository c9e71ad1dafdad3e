/** Parts: where each is, which item is in its place, what was found and decided. */
import type { ReferenceNode } from "../../../grammar/syntax.ts";
import { joinedParts } from "../criticality.ts";
import { decisionsWith, settledBy, toBeReconditioned } from "../part-decisions.ts";
import { addRunning } from "../running.ts";
import type { DatedFact, Item, PartPlace, PartState, Running } from "../states.ts";
import type { TreeKind, TreeNode } from "../tree/node.ts";
import { below, isWithin } from "../tree/node.ts";
import { whereabouts } from "../whereabouts.ts";
import { putOn } from "./fitting.ts";
import { beginItemInHand, countOf, firstItem, record } from "./items.ts";
import { openJoint } from "./joint-opening.ts";
import { decide, isOn, partOf, releaseFromJoints, takeOff, topmost } from "./part-places.ts";
import type { Handlers, Replay } from "./replay.ts";
import { seeAlso } from "./see-also.ts";
import type { Growing } from "./state-table.ts";
import { inHandOf, moveGoods } from "./supply.ts";

/** Every part as the log begins. */
export function partsAtStart(replay: Replay): void {
  for (const node of replay.gathered.tree.ofKind("part")) {
    const found = replay.definitions.one(node, "as_found")?.record.choice ?? "on";
    replay.parts.set(node, {
      node,
      place: PLACES[found],
      placed: undefined,
      missing: found === "missing",
      item: firstItem(replay, node),
      earlier: [],
      decision: undefined,
      decisions: [],
      sent: undefined,
      returned: undefined,
      tags: [],
    });
  }
}

const PLACES = { on: "on", missing: "gone", loose: "off", shelf: "shelf" } as const satisfies Record<
  string,
  PartPlace
>;

export const partHandlers: Handlers = {
  removed: (replay, fact) => {
    const targets = topmost(replay.partsOf(fact.fact.what));
    const unit = new Set(fact.fact.asUnit ? targets.map(({ node }) => node) : []);
    for (const { node, through } of targets) {
      const part = partOf(replay, node);
      if (isOn(part)) takeOff(replay, part, fact, { place: "off", unit });
      else if (through === undefined) {
        const data = { what: node.path, place: part.place };
        replay.complainOf(node, "removed-twice", fact.place, data, seeAlso("removed before", part.placed));
        releaseFromJoints(replay, node, fact, unit);
      }
    }
  },

  stripped: (replay, fact) => {
    for (const node of namedOnes(replay, fact.fact.what)) strip(replay, node, fact);
  },

  fitted: (replay, fact) => {
    for (const target of topmost(replay.partsOf(fact.fact.what))) putOn(replay, target, fact);
  },

  sent: (replay, fact) => {
    for (const { node } of topmost(replay.partsOf(fact.fact.what))) {
      const part = partOf(replay, node);
      if (isOn(part)) takeOff(replay, part, fact, { place: "away" });
      else replay.disturb(node, fact);
      Object.assign(part, { place: "away", placed: fact, missing: false, sent: fact, returned: undefined });
    }
  },

  back: (replay, fact) => {
    for (const { node, through } of topmost(replay.partsOf(fact.fact.what))) {
      const part = partOf(replay, node);
      const { sent, returned, item } = part;
      if (sent === undefined || returned !== undefined) {
        if (through === undefined)
          replay.complainOf(node, "back-never-sent", fact.place, { what: node.path });
        continue;
      }
      part.returned = fact;
      // Another one went on meanwhile: what comes back is the one before it.
      if (item.since !== undefined && item.since.order > sent.order) continue;
      if (isOn(part)) takeOff(replay, part, fact, { place: "off" });
      Object.assign(part, { place: "off", placed: fact });
      decide(part, settledBy(part.decisions, "worked on", fact));
      record(part, { is: "back", fact });
    }
  },

  inspected: (replay, fact) => {
    for (const part of inQuestion(replay, fact.fact.what))
      record(part, { is: "inspected", method: fact.fact.method, fact });
  },

  measured: (replay, fact) => {
    const { target, name } = fact.fact;
    const { names, definitions } = replay;
    const node = name === undefined ? names.member(definitions, target).node : names.one(target, TREE);
    const part = node && replay.parts.get(node);
    if (part !== undefined) beginItemInHand(replay, part);
  },

  found: (replay, fact) => {
    for (const part of inQuestion(replay, fact.fact.what)) {
      for (const { condition, at } of fact.fact.conditions) {
        record(part, { is: "found", condition, place: replay.placeIn(fact, at), fact });
        if (condition === "missing") {
          if (isOn(part)) takeOff(replay, part, fact, { place: "gone" });
          Object.assign(part, { place: "gone", placed: fact, missing: true });
        } else if (part.missing) Object.assign(part, { place: "off", placed: fact, missing: false });
      }
    }
  },

  decided: (replay, fact) => {
    const { items, decision } = fact.fact;
    for (const { count, stated, reference } of items) {
      for (const { node } of replay.partsOf([reference])) {
        const part = partOf(replay, node);
        const whole = countOf(replay, node);
        const made = { decision, count: stated ? count : whole, fact, settled: undefined };
        decide(part, decisionsWith(part.decisions, made, whole));
        record(part, { is: "decided", decision, fact });
        if (decision === "scrap" && part.place === "off") part.place = "gone";
        // What was thrown away is there after all.
        else if (KEPT.has(decision) && part.place === "gone" && !part.missing) part.place = "off";
      }
    }
  },

  reconditioned: (replay, fact) => {
    for (const { node } of replay.partsOf(fact.fact.what)) {
      const part = partOf(replay, node);
      const kit = replay.definitions.one(node, "kit");
      const kitNode = kit && replay.names.one(kit.record.reference, ["part"], kit.turns);
      const needed = toBeReconditioned(part.decisions) ?? countOf(replay, node);
      const kitInHand = kitNode === undefined || inHandOf(replay, kitNode) >= needed;
      if (kitNode !== undefined) moveGoods(replay, kitNode, -needed, fact);
      record(part, { is: "reconditioned", kitInHand, fact });
      if (kitInHand) decide(part, settledBy(part.decisions, "worked on", fact));
    }
  },

  repaired: (replay, fact) => {
    for (const { node } of replay.partsOf(fact.fact.what)) {
      const part = partOf(replay, node);
      record(part, { is: "repaired", fact });
      decide(part, settledBy(part.decisions, "worked on", fact));
    }
  },

  tagged: (replay, fact) => {
    for (const part of inQuestion(replay, fact.fact.what)) part.tags = [...part.tags, fact];
  },

  serviced: (replay, fact) => {
    for (const part of inQuestion(replay, fact.fact.what)) part.item = { ...part.item, serviced: fact };
  },

  seen: (replay, fact) => {
    for (const part of inQuestion(replay, fact.fact.what)) see(replay, part, fact);
  },

  ran: (replay, fact) => {
    // What was fitted together has run as long, so few sums are new ones.
    const sums = new Map<Running, Running>();
    for (const part of partsWithin(replay, fact.fact.target)) {
      const place = whereabouts(replay, part.node)?.place;
      if (place !== "on" && place !== "trial") continue;
      const running = sums.get(part.item.running) ?? addRunning(part.item.running, fact.fact);
      sums.set(part.item.running, running);
      part.item = withRunning(part.item, running);
    }
  },
};

const TREE: readonly TreeKind[] = ["assembly", "part", "joint", "system", "circuit"];
const KEPT: ReadonlySet<string> = new Set(["reuse", "recondition", "repair", "modify"]);

/** Parts of which something is said: of the new one where the old one is off to be replaced by it. */
function inQuestion(replay: Replay, what: readonly ReferenceNode[]): readonly Growing<PartState>[] {
  return replay.partsOf(what).map(({ node }) => {
    const part = partOf(replay, node);
    beginItemInHand(replay, part);
    return part;
  });
}

/** What is named itself: a part, or an assembly for all that it holds. */
function namedOnes(replay: Replay, what: readonly ReferenceNode[]): ReadonlySet<TreeNode> {
  return new Set(replay.partsOf(what).map(({ node, through }) => through ?? node));
}

/** Opened up into its pieces: what is in it comes out, whole; its joints open, but for those within what came out. */
function strip(replay: Replay, holder: TreeNode, fact: DatedFact<"stripped">): void {
  for (const inner of contentsOf(replay, holder)) {
    const part = replay.parts.get(inner);
    if (part === undefined) {
      const joined = joinedParts(replay, inner);
      if (joined.every(({ path }) => isWithin(path, holder.path))) openJoint(replay, inner, fact);
    } else if (isOn(part)) takeOff(replay, part, fact, { place: "off" });
    else releaseFromJoints(replay, inner, fact);
  }
  replay.disturb(holder, fact);
}

/** The parts and joints that are directly in something, through assemblies. */
function* contentsOf(replay: Replay, { children }: TreeNode): Generator<TreeNode> {
  for (const child of children) {
    if (replay.parts.has(child) || replay.joints.has(child)) yield child;
    else yield* contentsOf(replay, child);
  }
}

/** Written out: it is done for every part of a vehicle each time that it runs. */
function withRunning(item: Item, running: Running): Item {
  const { number, since, inHand, made, expires, batch, readings, events, serviced } = item;
  return { number, since, inHand, made, expires, batch, readings, events, serviced, running };
}

/** The parts of a branch: a part with what is in it, or what an assembly holds. */
function partsWithin(replay: Replay, reference: ReferenceNode): readonly Growing<PartState>[] {
  const node = replay.names.one(reference, TREE);
  const parts: Growing<PartState>[] = [];
  const add = (inner: TreeNode) => {
    const part = replay.parts.get(inner);
    if (part !== undefined) parts.push(part);
  };
  if (node?.kind === "part") for (const inner of [node, ...below(node)]) add(inner);
  else for (const target of replay.partsOf([reference])) add(target.node);
  return parts;
}

/** The second pair of eyes is not the one who did the work, or looked at it last. */
function see(replay: Replay, part: Growing<PartState>, fact: DatedFact<"seen">): void {
  const { by } = fact.fact;
  const done = part.item.events.findLast(
    ({ is }) => is === "repaired" || is === "reconditioned" || is === "inspected",
  )?.fact;
  if (by !== undefined && done?.fact.by === by) {
    const data = { what: part.node.path, by };
    replay.complainOf(part.node, "seen-by-same", fact.place, data, seeAlso("done by the same", done));
  } else record(part, { is: "seen", fact });
}
