/**
 * Inspections of hold points again and again through a diary: only what was touched since the last one is looked at anew,
 * and what can change without being touched.
 */
import { coverOf } from "./cover.ts";
import type { NamedDefinition } from "./definitions.ts";
import type { OpenItem } from "./open-item.ts";
import { openBesides, openItemsOf } from "./openness.ts";
import type { Standing } from "./standing.ts";
import type { TreeNode } from "./tree/node.ts";

interface Inspected {
  /** With the changes of which moment: others make everything new. */
  readonly moment: object;
  /** Covered things whose state hangs on what was found of others: fits, calculated limits. */
  readonly hanging: readonly TreeNode[];
  /** Things that were open. */
  readonly open: Map<TreeNode, readonly OpenItem[]>;
  /** Things touched since. */
  readonly touched: Set<TreeNode>;
}

export class Inspections {
  private readonly byHold = new Map<NamedDefinition, Inspected>();

  /** The same, to be gone on with by itself. */
  copy(): Inspections {
    const copy = new Inspections();
    for (const [hold, inspected] of this.byHold)
      copy.byHold.set(hold, {
        ...inspected,
        open: new Map(inspected.open),
        touched: new Set(inspected.touched),
      });
    return copy;
  }

  /** A fact has changed these. */
  touch(nodes: Iterable<TreeNode>): void {
    for (const { touched } of this.byHold.values()) for (const node of nodes) touched.add(node);
  }

  /** Whether any hold point has been inspected: until then nothing needs to be told. */
  get begun(): boolean {
    return this.byHold.size > 0;
  }

  /** Everything that is open for a hold point, as `openItems` has it. */
  openItems(standing: Standing, hold: NamedDefinition): readonly OpenItem[] {
    const before = this.byHold.get(hold);
    const fresh = before?.moment === standing.definitions.moment ? before : undefined;
    const open = fresh?.open ?? new Map<TreeNode, readonly OpenItem[]>();
    const { nodes } = coverOf(standing, hold);
    const hanging = fresh?.hanging ?? [...nodes].filter((node) => hangsOnOthers(standing, node));
    const stale = fresh === undefined ? nodes : new Set([...fresh.touched, ...hanging, ...dated(standing)]);
    for (const node of stale) {
      const items = openItemsOf(standing, hold, [node]);
      if (items.length === 0) open.delete(node);
      else open.set(node, items);
    }
    this.byHold.set(hold, {
      moment: standing.definitions.moment,
      hanging,
      open,
      touched: new Set(),
    });
    const ofThings = [...open].sort(([a], [b]) => a.order - b.order).flatMap(([, items]) => items);
    return [...ofThings, ...openBesides(standing, hold)];
  }
}

function hangsOnOthers({ definitions }: Standing, node: TreeNode): boolean {
  if (definitions.one(node, "fit") !== undefined) return true;
  if (definitions.one(node, "limit") === undefined) return false;
  return node.kind === "assembly" || definitions.one(node, "calc") !== undefined;
}

/** Parts whose item is good until a day, or counted from one: the day alone may end that. */
function dated({ definitions, parts }: Standing): readonly TreeNode[] {
  return [...parts.values()]
    .filter(
      ({ node, item }) =>
        item.expires !== undefined ||
        definitions.all(node, "life").some(({ record }) => record.life.counted !== "running"),
    )
    .map(({ node }) => node);
}
