import type { RecordWord } from "./lowering/definition-record.ts";
import type { Standing } from "./standing.ts";
import type { Definitions } from "./tree/definitions.ts";
import type { TreeNode } from "./tree/node.ts";

const remembered = new WeakMap<Definitions, Map<RecordWord, readonly TreeNode[]>>();

/** The things of which something is said under a word, defaults included, in the order of the tree. */
export function thingsThatSay(
  { definitions, gathered }: Pick<Standing, "definitions" | "gathered">,
  word: RecordWord,
): readonly TreeNode[] {
  const since = definitions.since([word]);
  const known = remembered.get(since) ?? new Map<RecordWord, readonly TreeNode[]>();
  remembered.set(since, known);
  const things =
    known.get(word) ?? [...gathered.tree.nodes()].filter((node) => definitions.one(node, word) !== undefined);
  known.set(word, things);
  return things;
}
