/** The vehicle as it stands: what is directly below a thing of the tree, each with its state. */
import type { Build } from "../../../build/build.ts";
import { condemnation } from "../../../build/condemnation.ts";
import { isCritical } from "../../../build/criticality.ts";
import type { TreeNode } from "../../../build/tree/node.ts";
import { below } from "../../../build/tree/node.ts";
import { whereabouts } from "../../../build/whereabouts.ts";
import type { BranchEntry, Look } from "../../protocol.ts";
import { isAmiss, stateOf } from "../../words/node-state.ts";
import { describeNode } from "../hover/of-node.ts";
import type { ChosenBuild } from "./chosen-build.ts";

/** @param path null for the vehicle; null is answered where there is no such thing (any more) */
export function branch(chosen: ChosenBuild, path: string | null): readonly BranchEntry[] | null {
  const { tree } = chosen.build.standing.gathered;
  const node = path === null ? tree.root : tree.at(path);
  return node === undefined ? null : node.children.flatMap((child) => entryOf(chosen, child));
}

/** All that is known of a thing, as its hover tells it. */
export function describeThingAt({ build }: ChosenBuild, path: string): string | null {
  const node = build.standing.gathered.tree.at(path);
  return node === undefined ? null : describeNode(build, node);
}

function entryOf(chosen: ChosenBuild, node: TreeNode): readonly BranchEntry[] {
  const { kind, path, name, title, header, children } = node;
  if (kind === "vehicle") return [];
  const { build } = chosen;
  return [
    {
      path,
      name,
      kind,
      title: title ?? null,
      state: stateOf(build, node),
      look: lookOf(build, node),
      critical: isCritical(build.standing, node),
      hasMore: children.length > 0,
      spot: header === undefined ? null : chosen.spotOf(header),
    },
  ];
}

const WANTING: ReadonlySet<Look> = new Set(["unsettled", "condemned", "away"]);

function lookOf(build: Build, node: TreeNode): Look {
  if (node.kind === "part") return lookOfPart(build, node);
  if (node.kind === "assembly") {
    const looks = [...below(node)]
      .filter(({ kind }) => kind !== "assembly")
      .map((each) => lookOf(build, each));
    if (looks.some((look) => WANTING.has(look))) return "unsettled";
    return looks.every((look) => look === "plain") ? "plain" : "settled";
  }
  if (isAmiss(build, node)) return "unsettled";
  const system = build.standing.systems.get(node);
  return system?.stage === "as_found" ? "plain" : "settled";
}

function lookOfPart({ standing }: Build, node: TreeNode): Look {
  const part = standing.parts.get(node);
  const where = whereabouts(standing, node);
  if (part === undefined || where === undefined) return "plain";
  if (condemnation(standing, part) !== undefined) return "condemned";
  if (part.missing || where.place === "away" || where.place === "gone") return "away";
  // As it was at the start: on the vehicle as found, or goods on the shelf.
  if (where.state.placed === undefined && where.place !== "off") return "plain";
  return where.place === "on" ? "settled" : "unsettled";
}
