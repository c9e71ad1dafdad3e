/** What is wrong with a tightening: its figure, its wrench, its time. */
import type { FindingExtras } from "../finding.ts";
import { awaitedBy } from "../joint-awaiting.ts";
import { isGrave, torqueFault } from "../joint-torque.ts";
import type { Place } from "../source.ts";
import { placeAt } from "../source.ts";
import type { DatedFact, TorqueReading } from "../states.ts";
import type { TreeNode } from "../tree/node.ts";
import { wrenchCoarseness } from "../wrench-check.ts";
import { complainUntil } from "./joint-complaints.ts";
import type { Replay } from "./replay.ts";

/** A figure that is not as asked, and a wrench that cannot be believed. */
export function complainOfReading(replay: Replay, joint: TreeNode, reading: TorqueReading): void {
  const place = placeOf(replay, reading.fact);
  const fault = torqueFault(replay, joint, reading);
  if (fault !== undefined)
    complainUntil(
      replay,
      "checked",
      joint,
      "torque-outside",
      place,
      { joint: joint.path, fault },
      torqueRecord(replay, joint),
    );
  const { gauge, torque, doubts } = reading;
  for (const doubt of doubts) {
    const extras = { seeAlso: [{ place: doubt.gauge.header, role: "gauge" }] };
    if (doubt.is === "out of range") {
      const data = { gauge: doubt.gauge.name, reading: torque, range: doubt.range };
      complainUntil(replay, "checked", joint, "gauge-out-of-range", place, data, extras);
    } else {
      const data = { gauge: doubt.gauge.name, good: doubt.good, used: reading.fact.date };
      complainUntil(replay, "checked", joint, "gauge-out-of-date", place, data, extras);
    }
  }
  if (gauge === undefined || doubts.length > 0 || isGrave(fault)) return;
  const coarse = wrenchCoarseness(replay, joint, gauge, torque);
  if (coarse !== undefined) complainUntil(replay, "checked", joint, "gauge-too-coarse", place, coarse);
}

/** The final tightening before what it waits for. */
export function complainOfTiming(
  replay: Replay,
  joint: TreeNode,
  fact: DatedFact<"torqued" | "tightened">,
): void {
  const awaited = awaitedBy(replay, joint);
  if (awaited === undefined) return;
  const { kind, definition, sourced } = awaited;
  const after = { place: placeAt(sourced.site, sourced.record.at), role: "after" };
  const data = { joint: joint.path, awaited: { kind, name: definition.name } };
  complainUntil(replay, "tightened", joint, "torqued-too-soon", fact.place, data, { seeAlso: [after] });
}

function placeOf(replay: Replay, fact: DatedFact<"torqued" | "rechecked">): Place {
  return fact.fact.word === "torqued" ? replay.placeIn(fact, fact.fact.torqueAt) : fact.place;
}

function torqueRecord(replay: Replay, joint: TreeNode): FindingExtras {
  const sourced = replay.definitions.one(joint, "torque");
  return sourced === undefined
    ? {}
    : { seeAlso: [{ place: placeAt(sourced.site, sourced.record.at), role: "torque" }] };
}
