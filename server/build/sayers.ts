import type { RecordWord } from "./lowering/definition-record.ts";
import type { Standing } from "./standing.ts";
import { AspectSet } from "./tree/aspect.ts";
import type { TreeNode } from "./tree/node.ts";

const sets = new Map<RecordWord, AspectSet>();
const remembered = new WeakMap<object, Map<RecordWord, readonly TreeNode[]>>();

/** The things of which something is said under a word, defaults included, in the order of the tree. */
export function thingsThatSay(
  { definitions, gathered }: Pick<Standing, "definitions" | "gathered">,
  word: RecordWord,
): readonly TreeNode[] {
  const set = sets.get(word) ?? new AspectSet(word);
  sets.set(word, set);
  const since = definitions.since(set);
  const known = remembered.get(since) ?? new Map<RecordWord, readonly TreeNode[]>();
  remembered.set(since, known);
  const things =
    known.get(word) ?? [...gathered.tree.nodes()].filter((node) => definitions.one(node, word) !== undefined);
  known.set(word, things);
  return things;
}
