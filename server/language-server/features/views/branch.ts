/** The vehicle as it stands: what is directly below a thing of the tree, each with its state. */
import type { Build } from "../../../build/build.ts";
import { circuitFaults } from "../../../build/circuits.ts";
import { condemnation } from "../../../build/condemnation.ts";
import { isCritical } from "../../../build/criticality.ts";
import { systemLack } from "../../../build/system-check.ts";
import { testLack } from "../../../build/tests.ts";
import type { TreeNode } from "../../../build/tree/node.ts";
import { below } from "../../../build/tree/node.ts";
import { whereabouts } from "../../../build/whereabouts.ts";
import type { BranchEntry, Look, ThingState } from "../../protocol.ts";
import { goodsInHand, isAmiss, isOnOutOfLimits } from "../../words/node-state.ts";
import type { ChosenBuild } from "./chosen-build.ts";

/** @param path null for the vehicle; null is answered where there is no such thing (any more) */
export function branch(chosen: ChosenBuild, path: string | null): readonly BranchEntry[] | null {
  const { tree } = chosen.build.standing.gathered;
  const node = path === null ? tree.root : tree.at(path);
  return node === undefined ? null : node.children.flatMap((child) => entryOf(chosen, child));
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
    const looks = looksBelow(build, node);
    if (looks.some((look) => WANTING.has(look))) return "unsettled";
    return looks.every((look) => look === "plain") ? "plain" : "settled";
  }
  if (isAmiss(build, node)) return "unsettled";
  const system = build.standing.systems.get(node);
  return system?.stage === "as_found" ? "plain" : "settled";
}

function looksBelow(build: Build, assembly: TreeNode): readonly Look[] {
  return [...below(assembly)].filter(({ kind }) => kind !== "assembly").map((each) => lookOf(build, each));
}

function stateOf(build: Build, node: TreeNode): ThingState {
  const { standing } = build;
  switch (node.kind) {
    case "part":
      return stateOfPart(build, node);
    case "joint":
      return { is: "joint", secured: !isAmiss(build, node) };
    case "system": {
      const system = standing.systems.get(node);
      return { is: "system", lack: (system && systemLack(standing, system)) ?? null };
    }
    case "circuit": {
      const atFault = circuitFaults(standing, node).length > 0;
      return { is: "circuit", atFault, tested: testLack(standing, node) === undefined };
    }
    default: {
      const looks = looksBelow(build, node);
      return { is: "assembly", wanting: looks.filter((look) => WANTING.has(look)).length, of: looks.length };
    }
  }
}

function stateOfPart({ standing }: Build, node: TreeNode): ThingState {
  const part = standing.parts.get(node);
  const where = whereabouts(standing, node);
  const missing = part?.missing === true;
  return {
    is: "part",
    place: missing ? "missing" : (where?.place ?? "on"),
    since: (missing ? undefined : where?.state.placed?.date) ?? null,
    condemned: part !== undefined && condemnation(standing, part) !== undefined,
    inHand: goodsInHand(standing, node) ?? null,
    outOfLimits: isOnOutOfLimits(standing, node),
  };
}

function lookOfPart({ standing }: Build, node: TreeNode): Look {
  const part = standing.parts.get(node);
  const where = whereabouts(standing, node);
  if (part === undefined || where === undefined) return "plain";
  if (condemnation(standing, part) !== undefined) return "condemned";
  if (part.missing || where.place === "away" || where.place === "gone") return "away";
  if (isOnOutOfLimits(standing, node)) return "unsettled";
  // As it was at the start: on the vehicle as found, or goods on the shelf.
  if (where.state.placed === undefined && where.place !== "off") return "plain";
  return where.place === "on" ? "settled" : "unsettled";
}
