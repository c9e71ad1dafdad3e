/** What a part can be whose identity nobody has stated: by what was measured of it, against tables and donors. */
import type { Build } from "../../build/build.ts";
import type { PartIdentification } from "../../build/identification.ts";
import { identifyPart } from "../../build/identification.ts";
import type { TreeNode } from "../../build/tree/node.ts";
import type { Match } from "../../trade/identification/match.ts";

export interface PossibleIdentity extends PartIdentification {
  /** The best that fit; where none does, what is near. */
  readonly shown: readonly Match[];
}

const MOST_SHOWN = 3;
/** One dimension alone fits far too much. */
const LEAST_DIMENSIONS = 2;
/** What scores less is no near miss but another thing; common practice, no source. */
const LEAST_SCORE = 0.05;

const remembered = new WeakMap<Build, Map<TreeNode, PossibleIdentity | undefined>>();

/** Undefined of what is no part, is known already, or has too little measured to tell. */
export function possibleIdentity(build: Build, node: TreeNode): PossibleIdentity | undefined {
  if (node.kind !== "part") return undefined;
  const known = remembered.get(build) ?? new Map<TreeNode, PossibleIdentity | undefined>();
  remembered.set(build, known);
  if (!known.has(node)) known.set(node, workOut(build, node));
  return known.get(node);
}

function workOut(build: Build, node: TreeNode): PossibleIdentity | undefined {
  if (isKnown(build, node)) return undefined;
  const found = identifyPart(build.standing, node);
  if (found === undefined || !found.dimensions.some(({ from }) => from.startsWith("measured")))
    return undefined;
  const { candidates, nearest, given, unknown } = found.identification;
  if (given.length - unknown.length < LEAST_DIMENSIONS) return undefined;
  const near = nearest.filter(({ score }) => score >= LEAST_SCORE);
  const shown = (candidates.length > 0 ? candidates : near).slice(0, MOST_SHOWN);
  return shown.length === 0 ? undefined : { ...found, shown };
}

/** By its number, or by what a day says that it was identified as. */
function isKnown({ standing, facts }: Build, node: TreeNode): boolean {
  if (standing.definitions.one(node, "number") !== undefined) return true;
  return facts.some(
    ({ fact }) => fact.word === "identified" && standing.names.one(fact.target, ["part"]) === node,
  );
}
