import type { FactOf } from "../lowering/fact.ts";
import type { TreeKind, TreeNode } from "../tree/node.ts";
import type { Replay } from "./replay.ts";

const TREE_KINDS: readonly TreeKind[] = ["assembly", "part", "joint", "system", "circuit"];

/**
 * What was measured or set: the thing and the name of the characteristic, however it was written (`REF NAME` or
 * `REF.NAME`). Undefined where the reference means nothing, which is complained about as such.
 */
export function characteristicIn(
  { names, definitions }: Replay,
  { target, name }: FactOf<"measured"> | FactOf<"set">,
): { readonly node: TreeNode; readonly name: string } | undefined {
  if (name === undefined) {
    const member = names.member(definitions, target);
    return member.node && { node: member.node, name: member.name };
  }
  const node = names.one(target, TREE_KINDS);
  return node && { node, name };
}
