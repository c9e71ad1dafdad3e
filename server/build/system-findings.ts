/** What was not done to fluid systems, at the fact that made it due, once something leans on it. */
import { fluidChangeOf } from "./intervals.ts";
import type { Leanings } from "./leaning.ts";
import { leaningPlace } from "./leaning.ts";
import { pastUnknown } from "./past.ts";
import type { Review } from "./review.ts";
import type { SystemState } from "./states.ts";
import { asksBleeding, asksProof, systemLack } from "./system-check.ts";

export function complainOfSystems(review: Review, leanings: Leanings): void {
  for (const system of review.systems.values()) {
    complainOfLack(review, system, leanings);
    complainOfAge(review, system, leanings);
  }
}

function complainOfLack(review: Review, system: SystemState, leanings: Leanings): void {
  const { node, opened, refusedProof } = system;
  const lack = systemLack(review, system);
  if (lack === undefined || opened === undefined) return;
  const leaning = leanings.on(node, opened, "systems");
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
function complainOfAge(review: Review, system: SystemState, leanings: Leanings): void {
  const interval = fluidChangeOf(review, system);
  // What is empty is filled anew before it is used.
  if (interval === undefined || system.stage === "open") return;
  const { node } = system;
  const { every, record, from, done, due } = interval;
  const fluid = review.definitions.one(node, "fluid")?.record.text;
  const data = { system: node.path, fluid, every, filled: from, due };
  if (done === undefined) {
    const leaning = pastUnknown(review) ? leanings.on(node, undefined, "systems") : undefined;
    if (leaning !== undefined)
      review.complainOf(node, "fluid-change-due", record, data, { seeAlso: [leaningPlace(leaning)] });
  } else if (due !== undefined && due < review.date) {
    const seeAlso = [{ place: record, role: "change" }];
    review.complainOf(node, "fluid-change-due", done.place, data, { seeAlso });
  }
}
