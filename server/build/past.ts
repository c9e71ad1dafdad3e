/** Whether the past of the vehicle is unknown: then what nobody has touched is not trusted. */
import type { Standing } from "./standing.ts";

export function pastUnknown({ definitions, gathered }: Pick<Standing, "definitions" | "gathered">): boolean {
  return definitions.one(gathered.tree.root, "past")?.record.choice !== "known";
}
