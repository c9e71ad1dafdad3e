/** Which snags keep a hold point shut. */
import { coverOf } from "./cover.ts";
import { isCritical } from "./criticality.ts";
import type { NamedDefinition } from "./definitions.ts";
import { comesBefore } from "./hold-order.ts";
import { recordOf } from "./judgement.ts";
import type { Standing } from "./standing.ts";
import type { SnagState } from "./states.ts";
import { isWithin } from "./tree/node.ts";

/** Snags on what a hold point covers, on an assembly of it, or on nothing known, neither cleared nor conceded past it. */
export function snagsOpenFor(standing: Standing, hold: NamedDefinition): readonly SnagState[] {
  const { whole, nodes, named } = coverOf(standing, hold);
  return [...standing.snags.values()].filter((snag) => {
    const { on, cleared } = snag;
    if (cleared !== undefined || isConceded(standing, snag, hold)) return false;
    return (
      whole || on === undefined || nodes.has(on) || named.some((covered) => isWithin(covered.path, on.path))
    );
  });
}

/**
 * A concession carries a snag past the hold points before the one that it names: those that come before it by `after:`,
 * else by their planned days. A defect of something whose failure can hurt is never conceded.
 */
function isConceded(standing: Standing, { on, conceded }: SnagState, hold: NamedDefinition): boolean {
  const until = conceded && standing.names.named("hold", conceded.fact.until.text);
  if (until === undefined || until === hold) return false;
  if (on !== undefined && isCritical(standing, on)) return false;
  if (comesBefore(standing, hold, until)) return true;
  if (comesBefore(standing, until, hold)) return false;
  const [planned, plannedUntil] = [hold, until].map((one) => recordOf(one, "planned")?.date);
  return planned !== undefined && plannedUntil !== undefined && planned < plannedUntil;
}
