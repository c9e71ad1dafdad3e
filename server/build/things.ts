/** The things of a tree by their kinds, in lists that stay the same as long as the tree does. */
import { listUnder } from "./list-under.ts";
import type { TreeKind, TreeNode } from "./tree/node.ts";
import type { Tree } from "./tree/tree.ts";

const remembered = new WeakMap<Tree, ReadonlyMap<TreeKind, readonly TreeNode[]>>();

/** In the order of definition. */
export function thingsOf(tree: Tree, kind: TreeKind): readonly TreeNode[] {
  const known = remembered.get(tree) ?? byKind(tree);
  remembered.set(tree, known);
  return known.get(kind) ?? NONE;
}

const NONE: readonly TreeNode[] = [];

function byKind(tree: Tree): ReadonlyMap<TreeKind, readonly TreeNode[]> {
  const lists = new Map<TreeKind, TreeNode[]>();
  for (const node of tree.nodes()) listUnder(lists, node.kind, node);
  return lists;
}

const all = new WeakMap<Tree, readonly TreeNode[]>();

export function everything(tree: Tree): readonly TreeNode[] {
  const known = all.get(tree) ?? [...tree.nodes()];
  all.set(tree, known);
  return known;
}

const others = new WeakMap<Tree, readonly TreeNode[]>();

/** Everything but the parts: what is measured of it is no item's. */
export function thingsBesideParts(tree: Tree): readonly TreeNode[] {
  const known = others.get(tree) ?? [...tree.nodes()].filter(({ kind }) => kind !== "part");
  others.set(tree, known);
  return known;
}
