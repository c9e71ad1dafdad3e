/**
 * Things that share their name because one is a copy of the other: `assembly front.right like front.left` gives a
 * `front.right.disc` for each `front.left.disc`, and who renames one renames both.
 */
import type { Build } from "../../build/build.ts";
import type { TreeNode } from "../../build/tree/node.ts";
import { isWithin } from "../../build/tree/node.ts";

/** A thing and all that have their last name from it, or it from them. */
export function familyOf(build: Build, node: TreeNode): ReadonlySet<TreeNode> {
  const { tree } = build.standing.gathered;
  const copies = copiesIn(build);
  const relatives = new Map<TreeNode, TreeNode[]>();
  const relate = (a: TreeNode, b: TreeNode) => relatives.set(a, [...(relatives.get(a) ?? []), b]);
  for (const copy of tree.nodes()) {
    const original = copy.copyOf === undefined ? undefined : tree.at(copy.copyOf);
    if (original === undefined || !copies.some((each) => isNamedBy(each, copy))) continue;
    relate(copy, original);
    relate(original, copy);
  }
  const family = new Set([node]);
  for (const member of family) for (const other of relatives.get(member) ?? []) family.add(other);
  return family;
}

interface Copy {
  readonly from: string;
  readonly to: string;
}

/** Every `like` of the build. */
function copiesIn({ sites }: Build): readonly Copy[] {
  return sites.flatMap(({ block: { header } }) => {
    const to = header?.values.get("name");
    const from = header?.values.get("like");
    return to?.kind === "word" && from?.kind === "word" ? [{ from: from.text, to: to.text }] : [];
  });
}

/** True where a thing stands below the copied branch, so that its last name came with the copy. */
function isNamedBy({ from, to }: Copy, { path, copyOf }: TreeNode): boolean {
  return path !== to && isWithin(path, to) && copyOf === from + path.slice(to.length);
}
