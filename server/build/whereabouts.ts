/** Where a part really is: below another part its place is relative, so a piston is where its caliper is. */
import type { Standing } from "./standing.ts";
import type { PartPlace, PartState } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";

export interface Whereabouts {
  readonly place: PartPlace;
  /** The part that is there: itself, or the one that it is in. */
  readonly state: PartState;
}

/** The place of the part, or of the nearest part around it that is not on; undefined for anything but a part. */
export function whereabouts({ parts }: Pick<Standing, "parts">, part: TreeNode): Whereabouts | undefined {
  const own = parts.get(part);
  if (own === undefined) return undefined;
  for (let around: TreeNode | undefined = part; around !== undefined; around = around.parent) {
    const state = parts.get(around);
    if (state !== undefined && state.place !== "on") return { place: state.place, state };
  }
  return { place: "on", state: own };
}
