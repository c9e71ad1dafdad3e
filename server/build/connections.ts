/** What hangs together: which joints hold a part, which systems a part's fluid is of, which joints are on a system. */
import { joinedParts, partsOfSystem } from "./criticality.ts";
import { listUnder } from "./list-under.ts";
import { madeOnce } from "./remembered.ts";
import type { Standing } from "./standing.ts";
import { AspectSet } from "./tree/aspect.ts";
import type { TreeNode } from "./tree/node.ts";

type Defined = Pick<Standing, "definitions" | "gathered" | "names">;

export interface Connections {
  /** The joints that hold a part. */
  readonly jointsOf: (part: TreeNode) => readonly TreeNode[];
  /** The systems whose fluid a part holds. */
  readonly systemsOf: (part: TreeNode) => readonly TreeNode[];
  /** The parts that hold a system's fluid. */
  readonly partsOf: (system: TreeNode) => readonly TreeNode[];
  /** The joints that hold a part of a system. */
  readonly jointsOn: (system: TreeNode) => readonly TreeNode[];
  /** The joints that are set by a characteristic of a thing. */
  readonly jointsSetBy: (node: TreeNode) => readonly TreeNode[];
  /** The systems that a joint is on. */
  readonly systemsOn: (joint: TreeNode) => readonly TreeNode[];
}

const GROUNDS = new AspectSet("joins", "parts", "set_by");
const remembered = new WeakMap<object, Connections>();

/** With the definitions in force; made once for as long as none of these words changes. */
export function connectionsOf(standing: Defined): Connections {
  const since = standing.definitions.since(GROUNDS);
  return madeOnce(remembered, since, () => connect(standing));
}

function connect(standing: Defined): Connections {
  const { tree } = standing.gathered;
  const joints = new Map<TreeNode, TreeNode[]>();
  const systems = new Map<TreeNode, TreeNode[]>();
  const setBy = new Map<TreeNode, TreeNode[]>();
  for (const joint of tree.ofKind("joint")) {
    for (const part of new Set(joinedParts(standing, joint))) listUnder(joints, part, joint);
    const set = standing.definitions.one(joint, "set_by");
    const by = set && standing.names.memberOf(set.record.reference, set.turns).node;
    if (by !== undefined) listUnder(setBy, by, joint);
  }
  const parts = new Map<TreeNode, readonly TreeNode[]>();
  const on = new Map<TreeNode, TreeNode[]>();
  for (const system of tree.ofKind("system")) {
    const held = new Set(partsOfSystem(standing, system));
    parts.set(system, [...held]);
    for (const part of held) listUnder(systems, part, system);
    for (const joint of new Set([...held].flatMap((part) => joints.get(part) ?? [])))
      listUnder(on, system, joint);
  }
  const under = new Map<TreeNode, TreeNode[]>();
  for (const [system, those] of on) for (const joint of those) listUnder(under, joint, system);
  return {
    jointsOf: (part) => joints.get(part) ?? [],
    systemsOf: (part) => systems.get(part) ?? [],
    partsOf: (system) => parts.get(system) ?? [],
    jointsSetBy: (node) => setBy.get(node) ?? [],
    jointsOn: (system) => on.get(system) ?? [],
    systemsOn: (joint) => under.get(joint) ?? [],
  };
}
