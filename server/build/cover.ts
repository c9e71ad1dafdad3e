/**
 * What a hold point covers: everything that its `covers:` means, and the joints and systems that hold a covered part,
 * wherever they are named; the whole vehicle without one.
 */
import { connectionsOf } from "./connections.ts";
import type { NamedDefinition } from "./definitions.ts";
import { coveredBy } from "./leaning.ts";
import { madeOnce } from "./remembered.ts";
import type { Standing } from "./standing.ts";
import { AspectSet } from "./tree/aspect.ts";
import type { TreeKind, TreeNode } from "./tree/node.ts";

type Defined = Pick<Standing, "definitions" | "gathered" | "names">;

export interface Cover {
  /** True without a `covers:`, or with one that means the vehicle. */
  readonly whole: boolean;
  /** In the order of definition. */
  readonly nodes: ReadonlySet<TreeNode>;
  /** What `covers:` names; the vehicle without one. */
  readonly named: readonly TreeNode[];
}

const GROUNDS = new AspectSet("joins", "parts");
const remembered = new WeakMap<object, Map<NamedDefinition, Cover>>();

/** With the definitions in force; made once for as long as none of these words changes. */
export function coverOf(standing: Defined, hold: NamedDefinition): Cover {
  const ofDefinitions = madeOnce(remembered, standing.definitions.since(GROUNDS), () => new Map());
  return madeOnce(ofDefinitions, hold, () => makeCover(standing, hold));
}

const TREE_KINDS: readonly TreeKind[] = ["assembly", "part", "joint", "system", "circuit"];

function makeCover(standing: Defined, hold: NamedDefinition): Cover {
  const { names, gathered } = standing;
  const references = hold.records.flatMap(({ record }) =>
    record.word === "covers" ? record.references : [],
  );
  const named =
    references.length === 0
      ? [gathered.tree.root]
      : references.flatMap((reference) => names.things(reference, TREE_KINDS));
  const covered = new Set(coveredBy(standing, hold));
  const { jointsOf, systemsOf } = connectionsOf(standing);
  for (const node of [...covered]) {
    for (const joint of jointsOf(node)) covered.add(joint);
    for (const system of systemsOf(node)) covered.add(system);
  }
  const nodes = new Set([...covered].sort((a, b) => a.order - b.order));
  return { whole: named.includes(gathered.tree.root), nodes, named };
}
