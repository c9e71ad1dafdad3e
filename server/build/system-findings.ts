/** What was not done to fluid systems, at the fact that made it due, once something leans on it. */
import { fluidChangeOf } from "./intervals.ts";
import type { Leanings } from "./leaning.ts";
import { leaningPlace } from "./leaning.ts";
import { pastUnknown } from "./past.ts";
import type { Replay } from "./replay/replay.ts";
import type { SystemState } from "./states.ts";
import { asksBleeding, asksProof, systemLack } from "./system-check.ts";

export function complainOfSystems(replay: Replay, leanings: Leanings): void {
  for (const system of replay.systems.values()) {
    complainOfLack(replay, system, leanings);
    complainOfAge(replay, system, leanings);
  }
}

function complainOfLack(replay: Replay, system: SystemState, leanings: Leanings): void {
  const { node, opened, refusedProof } = system;
  const lack = systemLack(replay, system);
  if (lack === undefined || opened === undefined) return;
  const leaning = leanings.on(node, opened, "systems");
  if (leaning === undefined) return;
  const extras = { seeAlso: [leaningPlace(leaning)] };
  const of = { system: node.path, opened: opened.date };
  if (lack !== "proof") {
    const data = { ...of, lacks: lack, asksBleeding: asksBleeding(replay, node) };
    replay.complainOf(node, "opened-not-bled", opened.place, data, extras);
    return;
  }
  const asked = asksProof(replay, node);
  // A proof that is none has its own complaint.
  if (asked === undefined || refusedProof !== undefined) return;
  const { pressure, time } = asked;
  replay.complainOf(node, "not-proved", opened.place, { ...of, pressure, time }, extras);
}

/** Fluid past its change; of unknown age once something leans on it. */
function complainOfAge(replay: Replay, system: SystemState, leanings: Leanings): void {
  const interval = fluidChangeOf(replay, system);
  // What is empty is filled anew before it is used.
  if (interval === undefined || system.stage === "open") return;
  const { node } = system;
  const { every, record, from, done, due } = interval;
  const fluid = replay.definitions.one(node, "fluid")?.record.text;
  const data = { system: node.path, fluid, every, filled: from, due };
  if (done === undefined) {
    const leaning = pastUnknown(replay) ? leanings.on(node, undefined, "systems") : undefined;
    if (leaning !== undefined)
      replay.complainOf(node, "fluid-change-due", record, data, { seeAlso: [leaningPlace(leaning)] });
  } else if (due !== undefined && due < replay.today) {
    const seeAlso = [{ place: record, role: "change" }];
    replay.complainOf(node, "fluid-change-due", done.place, data, { seeAlso });
  }
}
