/** What was not done to fluid systems, at the fact that made it due, once something leans on it. */
import type { Finding } from "./finding.ts";
import { fluidChangeOf } from "./intervals.ts";
import { KeptOfEach } from "./kept-of-each.ts";
import { leaningPlace } from "./leaning.ts";
import { pastUnknown } from "./past.ts";
import type { Review } from "./review.ts";
import type { SystemState } from "./states.ts";
import { asksBleeding, asksProof, systemLack } from "./system-check.ts";
import type { TreeNode } from "./tree/node.ts";

const ofSystems = new KeptOfEach<TreeNode, Finding>();

export function complaintsOfSystems(review: Review): readonly Finding[] {
  return ofSystems.complaints(review, review.gathered.tree.ofKind("system"), [], (own, node) => {
    const system = own.systems.get(node);
    if (system === undefined) return;
    complainOfLack(own, system);
    complainOfAge(own, system);
  });
}

function complainOfLack(review: Review, system: SystemState): void {
  const { node, opened, refusedProof } = system;
  const lack = systemLack(review, system);
  if (lack === undefined || opened === undefined) return;
  const leaning = review.leaningOn(node, opened, "systems");
  if (leaning === undefined) return;
  const extras = { seeAlso: [leaningPlace(leaning)] };
  const of = { system: node.path, opened: opened.date };
  if (lack !== "proof") {
    const data = { ...of, lacks: lack, asksBleeding: asksBleeding(review, node) };
    review.complainOf(node, "opened-not-bled", opened.place, data, extras);
    return;
  }
  const asked = asksProof(review, node);
  // A proof that is none has its own complaint.
  if (asked === undefined || refusedProof !== undefined) return;
  const { pressure, time } = asked;
  review.complainOf(node, "not-proved", opened.place, { ...of, pressure, time }, extras);
}

/** Fluid past its change; of unknown age once something leans on it. */
function complainOfAge(review: Review, system: SystemState): void {
  const interval = fluidChangeOf(review, system);
  // What is empty is filled anew before it is used.
  if (interval === undefined || system.stage === "open") return;
  const { node } = system;
  const { every, record, from, done, due } = interval;
  const fluid = review.definitions.one(node, "fluid")?.record.text;
  const data = { system: node.path, fluid, every, filled: from, due };
  if (done === undefined) {
    const leaning = pastUnknown(review) ? review.leaningOn(node, undefined, "systems") : undefined;
    if (leaning !== undefined)
      review.complainOf(node, "fluid-change-due", record, data, { seeAlso: [leaningPlace(leaning)] });
  } else if (due !== undefined && due < review.date) {
    const seeAlso = [{ place: record, role: "change" }];
    review.complainOf(node, "fluid-change-due", done.place, data, { seeAlso });
  }
}
