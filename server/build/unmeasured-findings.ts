/** Limits that nothing has been measured against, once something leans on the part. */
import { isCritical } from "./criticality.ts";
import { jointsSetBy } from "./joint-setting.ts";
import { unmeasuredLimits } from "./judgement.ts";
import type { Leaning, Leanings } from "./leaning.ts";
import { leaningPlace } from "./leaning.ts";
import type { Replay } from "./replay/replay.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { PartState } from "./states.ts";
import type { SourcedRecord } from "./tree/node.ts";

export function complainOfUnmeasured(replay: Replay, leanings: Leanings): void {
  for (const part of replay.parts.values()) {
    // What is off is an open item as a whole, and may yet be measured.
    if (part.place !== "on") continue;
    const limits = unmeasuredLimits(replay, part.node, part.item).filter(
      ({ record }) => !isLeftToJoint(replay, part, record.name),
    );
    if (limits.length === 0) continue;
    const fitted = part.placed?.fact.word === "fitted" ? part.placed : undefined;
    const leaning = leanings.on(part.node, fitted, "limits");
    if (leaning !== undefined)
      for (const limit of limits) complainOfLimit(replay, part, limit, leaning, fitted?.place);
  }
}

/** A measurement that sets a joint is missed by that joint, once it has been open: one mistake is one complaint. */
function isLeftToJoint(replay: Replay, { node }: PartState, name: string): boolean {
  return jointsSetBy(replay, node, name).some((joint) => replay.joints.get(joint)?.opened !== undefined);
}

/** At the fitting that made the measurement due; of what was never off, at the limit. */
function complainOfLimit(
  replay: Replay,
  { node }: PartState,
  { record, site, turns }: SourcedRecord<"limit">,
  leaning: Leaning,
  fitted: Place | undefined,
): void {
  const asked = placeAt(site, record.at);
  // A copied limit stands in another thing's block.
  const own = turns.length === 0 ? asked : (node.header ?? asked);
  replay.complainOf(
    node,
    "limit-not-measured",
    fitted ?? own,
    {
      what: node.path,
      characteristic: record.name,
      critical: isCritical(replay, node),
      leans: leaning.is,
      hold: "hold" in leaning ? leaning.hold.name : undefined,
    },
    { seeAlso: [{ place: asked, role: "limit" }, leaningPlace(leaning)] },
  );
}
