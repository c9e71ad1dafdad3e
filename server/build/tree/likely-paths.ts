/** Paths that a reference which leads nowhere could be a slip for. */
import { nearest } from "../../../grammar/nearest.ts";
import type { TreeNode } from "./node.ts";
import type { Tree } from "./tree.ts";

/**
 * The nearest paths, and tails that leave no choice: those in which the fewest names have a slip.
 *
 * @param taken whether a thing could stand where the text stands
 */
export function likelyPaths(tree: Tree, text: string, taken: (node: TreeNode) => boolean): readonly string[] {
  const names = text.split(".");
  const slips = slipsIn(tree);
  let fewest = names.length + 1;
  let candidates = new Set<string>();
  for (const node of candidateNodes(tree, names)) {
    const count = slips.in(names, node, fewest);
    if (count > fewest || !taken(node)) continue;
    if (count < fewest) candidates = new Set();
    fewest = count;
    candidates.add(written(tree, node, names.length));
  }
  return nearest(text, candidates, MOST);
}

const MOST = 4;

/** The path, or a tail of as many names where that leaves no choice. */
function written(tree: Tree, { path }: TreeNode, length: number): string {
  const tail = path.split(".").slice(-length).join(".");
  return tree.withTail(tail).length === 1 ? tail : path;
}

/** Things whose last name is near, and those beside the place where it would be. */
function candidateNodes(tree: Tree, names: readonly string[]): Iterable<TreeNode> {
  const last = names.at(-1) ?? "";
  const alike = [last, ...nearest(last, tree.lastNames(), 8)].flatMap((name) => tree.withTail(name));
  const above = names.slice(0, -1).join(".");
  // Of two letters none is near by itself; beside its neighbours it may be.
  const beside =
    above === "" || last.length > 2 ? [] : tree.withTail(above).flatMap(({ children }) => children);
  return new Set([...alike, ...beside]);
}

/** So many misspelt names are remembered at once. */
const MOST_REMEMBERED = 1000;

const remembered = new WeakMap<Tree, Slips>();

function slipsIn(tree: Tree): Slips {
  const known = remembered.get(tree) ?? new Slips();
  remembered.set(tree, known);
  return known;
}

/** How many names differ by a slip, remembered name by name: paths share most of theirs. */
class Slips {
  private readonly known = new Map<string, Map<string, boolean>>();

  /** Counted from the last name upwards, no further than `most`; more than that where a name is another altogether. */
  in(names: readonly string[], node: TreeNode, most: number): number {
    let count = 0;
    let above: TreeNode | undefined = node;
    for (let index = names.length - 1; index >= 0; index--) {
      const name = names[index] as string;
      if (above?.parent === undefined || (above.name !== name && !this.between(name, above.name)))
        return Number.POSITIVE_INFINITY;
      if (above.name !== name && ++count > most) return count;
      above = above.parent;
    }
    return count;
  }

  private between(written: string, name: string): boolean {
    if (written.length < 3) return true;
    const others = this.comparedWith(written);
    const known = others.get(name);
    if (known !== undefined) return known;
    const like = nearest(written, [name]).length > 0;
    others.set(name, like);
    return like;
  }

  private comparedWith(written: string): Map<string, boolean> {
    const known = this.known.get(written);
    if (known !== undefined) return known;
    if (this.known.size >= MOST_REMEMBERED) this.known.clear();
    const made = new Map<string, boolean>();
    this.known.set(written, made);
    return made;
  }
}
