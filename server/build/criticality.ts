import { madeOnce } from "./remembered.ts";
import type { Standing } from "./standing.ts";
import { AspectSet } from "./tree/aspect.ts";
import type { TreeNode } from "./tree/node.ts";

type Defined = Pick<Standing, "definitions" | "names">;

/** What was found for as long as the definitions say the same, of each thing that was asked about. */
type Found<T> = WeakMap<object, Map<TreeNode, T>>;

const HURTING = new AspectSet("safety", "joins", "parts");
const JOINS = new AspectSet("joins");
const PARTS = new AspectSet("parts");

const critical: Found<boolean> = new WeakMap();
const joined: Found<readonly TreeNode[]> = new WeakMap();
const holding: Found<readonly TreeNode[]> = new WeakMap();

/**
 * True where a thing's failure can hurt: it says so itself, an assembly above it does, or, of a joint or system, one of
 * the parts that it holds.
 */
export function isCritical(standing: Defined, node: TreeNode): boolean {
  return once(critical, standing.definitions.since(HURTING), node, () => canHurt(standing, node));
}

function canHurt(standing: Defined, node: TreeNode): boolean {
  for (let above: TreeNode | undefined = node; above !== undefined; above = above.parent) {
    if (standing.definitions.one(above, "safety") !== undefined) return true;
  }
  if (node.kind === "joint") return joinedParts(standing, node).some((part) => isCritical(standing, part));
  if (node.kind === "system") return partsOfSystem(standing, node).some((part) => isCritical(standing, part));
  return false;
}

/** The parts that a joint holds. */
export function joinedParts(defined: Defined, joint: TreeNode): readonly TreeNode[] {
  return once(joined, defined.definitions.since(JOINS), joint, () => partsIn(defined, joint, "joins"));
}

/** The parts that hold a system's fluid. */
export function partsOfSystem(defined: Defined, system: TreeNode): readonly TreeNode[] {
  return once(holding, defined.definitions.since(PARTS), system, () => partsIn(defined, system, "parts"));
}

function partsIn({ definitions, names }: Defined, node: TreeNode, word: "joins" | "parts"): TreeNode[] {
  return definitions
    .all(node, word)
    .flatMap(({ record, turns }) =>
      record.references.flatMap((reference) => names.targets(reference, ["part"], turns)),
    )
    .map(({ node }) => node);
}

function once<T>(found: Found<T>, since: object, node: TreeNode, find: () => T): T {
  const known = madeOnce(found, since, () => new Map<TreeNode, T>());
  return madeOnce(known, node, find);
}
