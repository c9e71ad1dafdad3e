import type { RecordWord } from "./lowering/definition-record.ts";
import { madeOnce } from "./remembered.ts";
import type { Standing } from "./standing.ts";
import { AspectSet } from "./tree/aspect.ts";
import type { TreeNode } from "./tree/node.ts";

const sets = new Map<RecordWord, AspectSet>();
const remembered = new WeakMap<object, readonly TreeNode[]>();

/** The things of which something is said under a word, defaults included, in the order of the tree. */
export function thingsThatSay(
  { definitions, gathered }: Pick<Standing, "definitions" | "gathered">,
  word: RecordWord,
): readonly TreeNode[] {
  const set = madeOnce(sets, word, () => new AspectSet(word));
  return madeOnce(remembered, definitions.since(set), () =>
    [...gathered.tree.nodes()].filter((node) => definitions.one(node, word) !== undefined),
  );
}
