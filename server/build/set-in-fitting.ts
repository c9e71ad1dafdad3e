import { setBy } from "./joint-setting.ts";
import type { Standing } from "./standing.ts";
import type { TreeNode } from "./tree/node.ts";

/**
 * Whether a characteristic is what a joint is set by: a float or preload is not the part's own, it is made anew whenever
 * the joint is done up.
 */
export function isSetInFitting(
  standing: Pick<Standing, "definitions" | "names" | "joints">,
  node: TreeNode,
  name: string,
): boolean {
  return [...standing.joints.keys()].some((joint) => {
    const by = setBy(standing, joint);
    return by?.node === node && by.name === name;
  });
}
