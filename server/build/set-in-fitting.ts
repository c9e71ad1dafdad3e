import { jointsSetBy } from "./joint-setting.ts";
import type { Standing } from "./standing.ts";
import type { TreeNode } from "./tree/node.ts";

/**
 * Whether a characteristic is what a joint is set by: a float or preload is not the part's own, it is made anew whenever
 * the joint is done up.
 */
export function isSetInFitting(
  standing: Pick<Standing, "definitions" | "gathered" | "names">,
  node: TreeNode,
  name: string,
): boolean {
  return jointsSetBy(standing, node, name).length > 0;
}
