import type { Standing } from "./standing.ts";
import type { TreeNode } from "./tree/node.ts";

type Defined = Pick<Standing, "definitions" | "names">;

/**
 * True where a thing's failure can hurt: it says so itself, an assembly above it does, or, of a joint or system, one of
 * the parts that it holds.
 */
export function isCritical(standing: Defined, node: TreeNode): boolean {
  for (let above: TreeNode | undefined = node; above !== undefined; above = above.parent) {
    if (standing.definitions.one(above, "safety") !== undefined) return true;
  }
  if (node.kind === "joint") return joinedParts(standing, node).some((part) => isCritical(standing, part));
  if (node.kind === "system") return partsOfSystem(standing, node).some((part) => isCritical(standing, part));
  return false;
}

/** The parts that a joint holds. */
export function joinedParts({ definitions, names }: Defined, joint: TreeNode): readonly TreeNode[] {
  return definitions
    .all(joint, "joins")
    .flatMap(({ record, turns }) =>
      record.references.flatMap((reference) => names.targets(reference, ["part"], turns)),
    )
    .map(({ node }) => node);
}

/** The parts that hold a system's fluid. */
export function partsOfSystem({ definitions, names }: Defined, system: TreeNode): readonly TreeNode[] {
  return definitions
    .all(system, "parts")
    .flatMap(({ record, turns }) =>
      record.references.flatMap((reference) => names.targets(reference, ["part"], turns)),
    )
    .map(({ node }) => node);
}
