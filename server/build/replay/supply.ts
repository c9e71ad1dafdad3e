/** Goods: what is on the shelf, what is on order, and every movement of it. */
import { nearest } from "../../../grammar/nearest.ts";
import type { Counted } from "../lowering/definition-record.ts";
import { toBeReplaced } from "../part-decisions.ts";
import type { DatedFact, OrderLine, SupplyState } from "../states.ts";
import type { TreeNode } from "../tree/node.ts";
import { countOf, rejectItemInHand } from "./items.ts";
import { partOf } from "./part-places.ts";
import type { Handlers, Replay } from "./replay.ts";
import type { Growing } from "./state-table.ts";

/** The goods of every part as the log begins. */
export function supplyAtStart(replay: Replay): void {
  for (const node of replay.gathered.tree.ofKind("part")) {
    const inHand = replay.definitions.one(node, "stock")?.record.count ?? 0;
    replay.supply.set(node, {
      node,
      inHand,
      acquired: 0,
      rejected: 0,
      ahead: 0,
      orders: [],
      movements: [],
    });
  }
}

export function inHandOf(replay: Replay, node: TreeNode): number {
  return replay.supply.get(node)?.inHand ?? 0;
}

/**
 * Goods come in or go out. Nothing goes below nought; but what was taken while it was on order was taken ahead of its
 * receipt, which then brings so much less.
 */
export function moveGoods(replay: Replay, node: TreeNode, change: number, fact: DatedFact): void {
  const supply = supplyOf(replay, node);
  const before = supply.inHand;
  const after = before + change;
  if (after < 0) supply.ahead = Math.min(supply.ahead - after, openCount(supply.orders));
  setInHand(supply, Math.max(0, after), fact);
}

function setInHand(supply: Growing<SupplyState>, inHand: number, fact: DatedFact): void {
  const change = inHand - supply.inHand;
  supply.inHand = inHand;
  supply.acquired = Math.min(supply.acquired, inHand);
  if (change !== 0) supply.movements = [...supply.movements, { change, fact }];
}

/** Goods that came from outside or were made: the ones that a new part can be. */
function acquire(replay: Replay, node: TreeNode, count: number, fact: DatedFact): void {
  const supply = supplyOf(replay, node);
  supply.acquired += count;
  setInHand(supply, supply.inHand + count, fact);
}

function openCount(orders: readonly OrderLine[]): number {
  return orders.reduce((sum, line) => sum + line.count - line.received, 0);
}

export const supplyHandlers: Handlers = {
  ordered: (replay, fact) => {
    const { items, order } = fact.fact;
    for (const { count, reference, at } of items) {
      for (const node of nodesOf(replay, reference)) {
        if (order !== undefined) noteOrder(replay, order, node);
        const supply = supplyOf(replay, node);
        const place = replay.placeIn(fact, reference);
        const line: OrderLine = { node, count, received: 0, price: at, fact, place };
        supply.orders = [...supply.orders, line];
      }
    }
  },

  received: (replay, fact) => {
    const { items, order } = fact.fact;
    for (const { count, reference } of items) {
      for (const node of nodesOf(replay, reference)) receive(replay, node, count, fact, order);
    }
    if (items.length === 0 && order !== undefined) receiveOrder(replay, order, fact);
  },

  bought: (replay, fact) => {
    for (const [node, count] of counted(replay, fact.fact.items)) acquire(replay, node, count, fact);
  },

  made: (replay, fact) => {
    for (const { node } of replay.partsOf(fact.fact.what)) {
      const asked = toBeReplaced(partOf(replay, node).decisions);
      acquire(replay, node, asked ?? countOf(replay, node), fact);
    }
  },

  rejected: (replay, fact) => {
    for (const [node, count] of counted(replay, fact.fact.items)) {
      const supply = supplyOf(replay, node);
      // What was fitted already is no longer in hand: it cannot leave the shelf twice.
      supply.rejected += count;
      setInHand(supply, Math.max(0, supply.inHand - count), fact);
      rejectItemInHand(partOf(replay, node));
    }
  },

  returned: (replay, fact) => {
    for (const [node, count] of counted(replay, fact.fact.items)) {
      const supply = supplyOf(replay, node);
      const rejected = Math.min(supply.rejected, count);
      supply.rejected -= rejected;
      setInHand(supply, Math.max(0, supply.inHand - (count - rejected)), fact);
    }
  },

  used: (replay, fact) => {
    for (const [node, count] of counted(replay, fact.fact.items)) moveGoods(replay, node, -count, fact);
  },

  counted: (replay, fact) => {
    for (const [node, count] of counted(replay, fact.fact.items)) {
      const supply = supplyOf(replay, node);
      supply.ahead = 0;
      setInHand(supply, count, fact);
    }
  },
};

function noteOrder(replay: Replay, order: string, node: TreeNode): void {
  replay.ordered.set(order, new Set(replay.ordered.get(order)).add(node));
}

/** The whole of a named order, as far as it is still open. */
function receiveOrder(replay: Replay, order: string, fact: DatedFact<"received">): void {
  const lines = [...(replay.ordered.get(order) ?? [])].flatMap((node) =>
    supplyOf(replay, node).orders.filter((line) => line.fact.fact.order === order),
  );
  const [first] = lines;
  if (first === undefined) complainOfOrder(replay, order, fact);
  else if (openCount(lines) === 0) {
    const data = { what: first.node.path, received: first.count, open: 0 };
    replay.complainOf(first.node, "received-over-order", fact.place, data);
  }
  for (const { node, count, received } of lines) {
    if (count > received) receive(replay, node, count - received, fact, order);
  }
}

/** An order that nobody gave. */
function complainOfOrder(replay: Replay, order: string, fact: DatedFact<"received">): void {
  const open = [...replay.supply.values()].flatMap(({ orders }) =>
    orders.flatMap((line) => (line.count > line.received ? (line.fact.fact.order ?? []) : [])),
  );
  const near = nearest(order, new Set(open), 4);
  const known = near.length > 0 ? near : [...new Set(open)].slice(0, 4);
  const quoted = known.map((ref) => `"${ref}"`);
  const place = replay.placeIn(fact, fact.fact.orderAt ?? fact.fact.at);
  const fixes =
    fact.fact.orderAt === undefined
      ? []
      : quoted.map((text) => ({ ...place, text, title: `Write ${text}`, sure: false }));
  replay.complain(
    "unknown-reference",
    place,
    {
      text: `order "${order}"`,
      kinds: [],
      nearest: quoted.length > 0 ? quoted : ["the ref of an order above"],
    },
    { fixes },
  );
}

/** Goods arrive: the oldest open order is settled first; of a named order only its own lines. */
function receive(
  replay: Replay,
  node: TreeNode,
  count: number,
  fact: DatedFact<"received">,
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
  if (left > 0) {
    const data = { what: node.path, received: count, open: count - left };
    replay.complainOf(node, "received-over-order", fact.place, data);
  }
  const ahead = Math.min(supply.ahead, count);
  supply.ahead -= ahead;
  acquire(replay, node, count - ahead, fact);
}

function counted(replay: Replay, items: readonly Counted[]): readonly (readonly [TreeNode, number])[] {
  return items.flatMap(({ count, reference }) =>
    nodesOf(replay, reference).map((node) => [node, count] as const),
  );
}

function nodesOf(replay: Replay, reference: Counted["reference"]): readonly TreeNode[] {
  return replay.partsOf([reference]).map(({ node }) => node);
}

function supplyOf(replay: Replay, node: TreeNode): Growing<SupplyState> {
  const supply = replay.supply.get(node);
  if (supply === undefined) throw new Error(`no goods for the part ${node.path}`);
  return supply;
}
