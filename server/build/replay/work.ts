/** Jobs: begun, worked on, finished. */

import type { ReferenceNode } from "../../../grammar/syntax.ts";
import { ZERO } from "../../quantities/decimal.ts";
import type { JobState } from "../states.ts";
import type { Growing, Handlers, Replay } from "./replay.ts";

export function workAtStart(replay: Replay): void {
  for (const definition of replay.names.every("job")) {
    replay.jobs.set(definition, { definition, started: undefined, done: undefined, worked: ZERO });
  }
}

export const workHandlers: Handlers = {
  started: (replay, fact) => {
    for (const job of jobsOf(replay, fact.fact.what)) job.started ??= fact;
  },
  worked: (replay, fact) => {
    for (const job of jobsOf(replay, [fact.fact.on])) {
      job.started ??= fact;
      job.worked = job.worked.plus(fact.fact.hours);
    }
  },
  done: (replay, fact) => {
    for (const job of jobsOf(replay, fact.fact.what)) {
      if (job.started === undefined)
        replay.complain("done-before-started", fact.place, { job: job.definition.name });
      job.done = fact;
    }
  },
};

function jobsOf(replay: Replay, references: readonly ReferenceNode[]): readonly Growing<JobState>[] {
  return references.flatMap((reference) => {
    const definition = replay.named("job", reference);
    const job = definition && replay.jobs.get(definition);
    return job === undefined ? [] : [job];
  });
}
