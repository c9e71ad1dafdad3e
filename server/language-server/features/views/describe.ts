/** All that is known of a thing, as its hover tells it. */
import { describeNode } from "../hover/of-node.ts";
import type { ChosenBuild } from "./chosen-build.ts";

/** Null where there is no such thing. */
export function describeThingAt({ build }: ChosenBuild, path: string): string | null {
  const node = build.standing.gathered.tree.at(path);
  return node === undefined ? null : describeNode(build, node);
}
