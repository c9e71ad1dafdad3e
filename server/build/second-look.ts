/** The second pair of eyes that a part asks for once it has been put on; that of a joint is part of its being secured. */
import type { Standing } from "./standing.ts";
import type { DatedFact, PartState } from "./states.ts";

/** The fact that put a part on which nobody but the one who did it has looked at since; undefined where all is well. */
export function unseenSince(
  { definitions }: Pick<Standing, "definitions">,
  { node, place, placed, item }: PartState,
): DatedFact | undefined {
  if (place !== "on" || placed === undefined) return undefined;
  if (definitions.one(node, "second_check")?.record.yes !== true) return undefined;
  const doer = placed.fact.by;
  const seen = item.events.some(
    ({ is, fact }) =>
      is === "seen" && fact.order > placed.order && (doer === undefined || fact.fact.by !== doer),
  );
  return seen ? undefined : placed;
}
