/** Limits that nothing has been measured against, once something leans on the part. */
import { isCritical } from "./criticality.ts";
import type { Finding } from "./finding.ts";
import { jointsSetBy } from "./joint-setting.ts";
import { unmeasuredLimits } from "./judgement.ts";
import { KeptOfEach } from "./kept-of-each.ts";
import type { Leaning } from "./leaning.ts";
import { leaningPlace } from "./leaning.ts";
import type { Review } from "./review.ts";
import { thingsThatSay } from "./sayers.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { Standing } from "./standing.ts";
import type { DatedFact } from "./states.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";

const ofThings = new KeptOfEach<TreeNode, Finding>();

export function complaintsOfUnmeasured(review: Review): readonly Finding[] {
  return ofThings.complaints(review, thingsThatSay(review, "limit"), [], (own, node) => {
    const due = dueOf(own, node);
    const leaning = due && own.leaningOn(node, due.fitted, "limits");
    if (due === undefined || leaning === undefined) return;
    for (const limit of due.limits) complainOfLimit(own, node, limit, leaning, due.fitted?.place);
  });
}

/** What is to be measured of a part. */
interface Due {
  readonly limits: readonly SourcedRecord<"limit">[];
  /** The fitting that made it due; undefined of a part that was never off. */
  readonly fitted: DatedFact<"fitted"> | undefined;
}

function dueOf(standing: Standing, node: TreeNode): Due | undefined {
  const part = standing.parts.get(node);
  // What is off is an open item as a whole, and may yet be measured.
  if (part?.place !== "on") return undefined;
  const limits = unmeasuredLimits(standing, node, part.item).filter(
    ({ record }) => !isLeftToJoint(standing, node, record.name),
  );
  if (limits.length === 0) return undefined;
  const { placed } = part;
  return { limits, fitted: placed?.fact.word === "fitted" ? (placed as DatedFact<"fitted">) : undefined };
}

/** A measurement that sets a joint is missed by that joint, once it has been open: one mistake is one complaint. */
function isLeftToJoint(standing: Standing, node: TreeNode, name: string): boolean {
  return jointsSetBy(standing, node, name).some((joint) => standing.joints.get(joint)?.opened !== undefined);
}

/** At the fitting that made the measurement due; of what was never off, at the limit. */
function complainOfLimit(
  review: Review,
  node: TreeNode,
  { record, site, turns }: SourcedRecord<"limit">,
  leaning: Leaning,
  fitted: Place | undefined,
): void {
  const asked = placeAt(site, record.at);
  // A copied limit stands in another thing's block.
  const own = turns.length === 0 ? asked : (node.header ?? asked);
  review.complainOf(
    node,
    "limit-not-measured",
    fitted ?? own,
    {
      what: node.path,
      characteristic: record.name,
      critical: isCritical(review, node),
      leans: leaning.is,
      hold: "hold" in leaning ? leaning.hold.name : undefined,
    },
    { seeAlso: [{ place: asked, role: "limit" }, leaningPlace(leaning)] },
  );
}
