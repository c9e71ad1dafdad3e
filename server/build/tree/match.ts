/** Paths with `*` for one name: what they match, in full or as a tail. */
import type { TreeNode } from "./node.ts";
import type { Tree } from "./tree.ts";

/** The things that match; or the full patterns that a tail could mean, where it leaves a choice. */
export type Matches = { readonly nodes: readonly TreeNode[] } | { readonly candidates: readonly string[] };

/**
 * @param pattern names joined by dots, any of them `*`; empty for the whole vehicle. As a path of names may be
 * shortened to a tail that leaves no choice, so may a pattern: what is left out before it must be one path.
 */
export function matches(tree: Tree, pattern: string): Matches {
  const whole = descend([tree.root], pattern === "" || pattern === tree.root.path ? [] : pattern.split("."));
  if (whole.length > 0) return { nodes: whole };
  return tailMatches(tree, pattern);
}

/** What is as many names below the things as there are names. */
function descend(from: readonly TreeNode[], names: readonly string[]): readonly TreeNode[] {
  return names.reduce<readonly TreeNode[]>(
    (nodes, name) =>
      nodes.flatMap(({ children }) =>
        name === "*" ? children : children.filter((child) => child.name === name),
      ),
    from,
  );
}

function tailMatches(tree: Tree, pattern: string): Matches {
  const names = pattern.split(".");
  const anchor = names.findLastIndex((name) => name !== "*");
  if (anchor < 0) return { nodes: [] };
  const before = names.slice(0, anchor).reverse();
  const found = new Map<string, TreeNode[]>();
  for (const node of tree.withTail(names[anchor] as string)) {
    const above = climb(node, before);
    const nodes = above === undefined ? [] : descend([node], names.slice(anchor + 1));
    if (above === undefined || nodes.length === 0) continue;
    // Never the root: from there it would be a full path.
    const beginning = `${above.path}.`;
    found.set(beginning, [...(found.get(beginning) ?? []), ...nodes]);
  }
  const [only, another] = found;
  if (only === undefined) return { nodes: [] };
  if (another === undefined) return { nodes: only[1] };
  return { candidates: [...found.keys()].map((beginning) => beginning + pattern) };
}

/** What stands above the names, which lead upwards from a thing; undefined where one of them differs. */
function climb(node: TreeNode, names: readonly string[]): TreeNode | undefined {
  let above = node.parent;
  for (const name of names) {
    if (above?.parent === undefined || (name !== "*" && above.name !== name)) return undefined;
    above = above.parent;
  }
  return above;
}
