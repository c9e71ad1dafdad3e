/** Jobs: begun, worked on, finished. */
import type { ReferenceNode } from "../../../grammar/syntax.ts";
import { ZERO } from "../../quantities/decimal.ts";
import { predecessorsOf } from "../hold-order.ts";
import type { DatedFact, JobState } from "../states.ts";
import type { Handlers, Replay } from "./replay.ts";
import type { Growing } from "./state-table.ts";

export function workAtStart(replay: Replay): void {
  for (const definition of replay.names.every("job")) {
    replay.jobs.set(definition, { definition, started: undefined, done: undefined, worked: ZERO });
  }
}

export const workHandlers: Handlers = {
  started: (replay, fact) => {
    for (const job of jobsOf(replay, fact.fact.what)) begin(replay, job, fact);
  },
  worked: (replay, fact) => {
    for (const job of jobsOf(replay, [fact.fact.on])) {
      begin(replay, job, fact);
      job.worked = job.worked.plus(fact.fact.hours);
    }
  },
  done: (replay, fact) => {
    for (const job of jobsOf(replay, fact.fact.what)) {
      if (job.started === undefined && job.done === undefined) {
        replay.complain("done-before-started", fact.place, { job: job.definition.name });
        complainOfOrder(replay, job, fact);
      }
      job.done = fact;
    }
  },
};

function begin(replay: Replay, job: Growing<JobState>, fact: DatedFact): void {
  if (job.started !== undefined) return;
  if (job.done === undefined) complainOfOrder(replay, job, fact);
  job.started = fact;
}

/** A job that is begun before one that it comes after is done. */
function complainOfOrder(replay: Replay, { definition }: JobState, fact: DatedFact): void {
  const undone = predecessorsOf(replay, definition).filter(
    (before) => replay.jobs.get(before) !== undefined && replay.jobs.get(before)?.done === undefined,
  );
  if (undone.length === 0) return;
  replay.complain(
    "job-out-of-order",
    fact.place,
    { job: definition.name, before: undone.map(({ name }) => name) },
    { seeAlso: undone.map(({ header }) => ({ place: header, role: "not done" })) },
  );
}

function jobsOf(replay: Replay, references: readonly ReferenceNode[]): readonly Growing<JobState>[] {
  return references.flatMap((reference) => {
    const definition = replay.named("job", reference);
    const job = definition && replay.jobs.get(definition);
    return job === undefined ? [] : [job];
  });
}
