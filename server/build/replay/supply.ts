/** Goods: what is on the shelf, what is on order, and every movement of it. */
import type { Counted } from "../lowering/definition-record.ts";
import type { DatedFact, OrderLine, SupplyState } from "../states.ts";
import type { TreeNode } from "../tree/node.ts";
import { countOf, partOf } from "./parts.ts";
import type { Growing, Handlers, Replay } from "./replay.ts";

/** The goods of every part as the log begins. */
export function supplyAtStart(replay: Replay): void {
  for (const node of replay.gathered.tree.ofKind("part")) {
    const inHand = replay.definitions.one(node, "stock")?.record.count ?? 0;
    replay.supply.set(node, { node, inHand, orders: [], movements: [] });
  }
}

export function inHandOf(replay: Replay, node: TreeNode): number {
  return replay.supply.get(node)?.inHand ?? 0;
}

/** Goods come in or go out; nothing goes below nought. */
export function moveGoods(replay: Replay, node: TreeNode, change: number, fact: DatedFact): void {
  const supply = supplyOf(replay, node);
  supply.inHand = Math.max(0, supply.inHand + change);
  supply.movements = [...supply.movements, { change, fact }];
}

export const supplyHandlers: Handlers = {
  ordered: (replay, fact) => {
    for (const item of fact.fact.items) {
      for (const node of nodesOf(replay, item)) {
        const supply = supplyOf(replay, node);
        const line: OrderLine = {
          node,
          count: item.count,
          received: 0,
          price: item.at,
          fact,
          place: replay.placeIn(fact, item.reference),
        };
        supply.orders = [...supply.orders, line];
      }
    }
  },

  received: (replay, fact) => {
    const { items, order } = fact.fact;
    for (const item of items) {
      for (const node of nodesOf(replay, item)) receive(replay, node, item.count, fact, order);
    }
    if (items.length > 0 || order === undefined) return;
    for (const supply of replay.supply.values()) {
      const open = supply.orders.filter((line) => line.fact.fact.order === order);
      const count = open.reduce((sum, line) => sum + line.count - line.received, 0);
      if (count > 0) receive(replay, supply.node, count, fact, order);
    }
  },

  bought: (replay, fact) => everyItem(replay, fact, fact.fact.items, (count) => count),
  rejected: (replay, fact) => everyItem(replay, fact, fact.fact.items, (count) => -count),
  returned: (replay, fact) => everyItem(replay, fact, fact.fact.items, (count) => -count),
  used: (replay, fact) => everyItem(replay, fact, fact.fact.items, (count) => -count),
  counted: (replay, fact) =>
    everyItem(replay, fact, fact.fact.items, (count, supply) => count - supply.inHand),

  made: (replay, fact) => {
    for (const { node } of replay.partsOf(fact.fact.what)) {
      const { decision } = partOf(replay, node);
      const count =
        decision?.decision === "make" && decision.settled === undefined
          ? decision.count
          : countOf(replay, node);
      moveGoods(replay, node, count, fact);
    }
  },
};

function everyItem(
  replay: Replay,
  fact: DatedFact,
  items: readonly Counted[],
  change: (count: number, supply: SupplyState) => number,
): void {
  for (const item of items) {
    for (const node of nodesOf(replay, item))
      moveGoods(replay, node, change(item.count, supplyOf(replay, node)), fact);
  }
}

/** Goods arrive: the oldest open order is settled first; of a named order only its own lines. */
function receive(
  replay: Replay,
  node: TreeNode,
  count: number,
  fact: DatedFact,
  order: string | undefined,
): void {
  const supply = supplyOf(replay, node);
  let left = count;
  supply.orders = supply.orders.map((line) => {
    if (order !== undefined && line.fact.fact.order !== order) return line;
    const taken = Math.min(left, line.count - line.received);
    left -= taken;
    return taken === 0 ? line : { ...line, received: line.received + taken };
  });
  if (left > 0 && supply.orders.length > 0) {
    replay.complainOf(node, "received-over-order", fact.place, {
      what: node.path,
      received: count,
      open: count - left,
    });
  }
  moveGoods(replay, node, count, fact);
}

function nodesOf(replay: Replay, { reference }: Counted): readonly TreeNode[] {
  return replay.partsOf([reference]).map(({ node }) => node);
}

function supplyOf(replay: Replay, node: TreeNode): Growing<SupplyState> {
  const supply = replay.supply.get(node);
  if (supply === undefined) throw new Error(`no goods for the part ${node.path}`);
  return supply;
}
