/** The hold points ahead: which of them something that ends will not last for. */
import type { IsoDate } from "../quantities/dates.ts";
import { compareDates } from "../quantities/dates.ts";
import { coverOf } from "./cover.ts";
import type { NamedDefinition } from "./definitions.ts";
import { isShut } from "./hold-order.ts";
import { recordOf } from "./judgement.ts";
import type { Standing } from "./standing.ts";
import type { TreeNode } from "./tree/node.ts";

export interface PlannedHold {
  readonly definition: NamedDefinition;
  readonly planned: IsoDate;
}

/** Hold points that are shut and planned, the earliest first. */
export function plannedHolds({ holds }: Standing): readonly PlannedHold[] {
  return [...holds.values()]
    .filter(isShut)
    .flatMap(({ definition }) => {
      const planned = recordOf(definition, "planned")?.date;
      return planned === undefined ? [] : [{ definition, planned }];
    })
    .sort((a, b) => compareDates(a.planned, b.planned));
}

/** The next of them that covers a thing: of those whose day has not gone by, else of those that are overdue. */
export function nextHoldCovering(
  standing: Standing,
  planned: readonly PlannedHold[],
  node: TreeNode,
): PlannedHold | undefined {
  const covering = planned.filter(({ definition }) => coverOf(standing, definition).nodes.has(node));
  return covering.find((hold) => hold.planned >= standing.date) ?? covering[0];
}

/** The first of them that covers a thing and is planned for later than it lasts. */
export function holdMissed(
  standing: Standing,
  planned: readonly PlannedHold[],
  node: TreeNode,
  ends: IsoDate,
): PlannedHold | undefined {
  return planned.find((hold) => ends < hold.planned && coverOf(standing, hold.definition).nodes.has(node));
}
