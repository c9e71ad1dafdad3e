/** Jobs and hold points that wait for each other in a circle. */
import type { NamedDefinition } from "./definitions.ts";
import type { Finding } from "./finding.ts";
import { recordsOf } from "./judgement.ts";
import { KeptOfAll } from "./kept-of-each.ts";
import type { Names } from "./names.ts";
import type { Review } from "./review.ts";
import { placeAt } from "./source.ts";

/** What a job or hold point comes after: what it says, and for a job the hold points that stop it. */
function predecessorsOf(names: Names, definition: NamedDefinition): readonly NamedDefinition[] {
  const said = recordsOf(definition, "after").flatMap(({ references }) =>
    references.map(({ text }) => names.named("job", text) ?? names.named("hold", text)),
  );
  const stopping = definition.kind === "job" ? holdsThatStop(names, definition) : [];
  return [...said, ...stopping].filter((one) => one !== undefined);
}

function holdsThatStop(names: Names, job: NamedDefinition): readonly NamedDefinition[] {
  return [...names.every("hold")].filter((hold) =>
    recordsOf(hold, "stops").some(({ jobs }) => jobs.some(({ text }) => text === job.name)),
  );
}

/** Each circle once, at the `after:` of a member that has one. */
export function complaintsOfCycles(review: Review): readonly Finding[] {
  return ofAll.complaints(review, [], (own) => {
    const settled = new Set<NamedDefinition>();
    for (const kind of ["job", "hold"] as const)
      for (const definition of own.names.every(kind)) followBack(own, definition, settled);
  });
}

const ofAll = new KeptOfAll<readonly Finding[]>();

/** Walks back from a job or hold point, depth first; without recursion, since chains may be long. */
function followBack(review: Review, start: NamedDefinition, settled: Set<NamedDefinition>): void {
  const path: { readonly definition: NamedDefinition; readonly before: NamedDefinition[] }[] = [];
  const onPath = new Set<NamedDefinition>();
  const enter = (definition: NamedDefinition): void => {
    path.push({ definition, before: [...predecessorsOf(review.names, definition)] });
    onPath.add(definition);
  };
  if (!settled.has(start)) enter(start);
  for (let last = path.at(-1); last !== undefined; last = path.at(-1)) {
    const next = last.before.shift();
    if (next === undefined) {
      path.pop();
      onPath.delete(last.definition);
      settled.add(last.definition);
    } else if (onPath.has(next)) {
      const around = path.map(({ definition }) => definition);
      complainOfCycle(review, around.slice(around.indexOf(next)));
    } else if (!settled.has(next)) enter(next);
  }
}

function complainOfCycle(review: Review, around: readonly NamedDefinition[]): void {
  // A job that is in the circle only because a hold point stops it says nothing of it itself.
  const saying = around.findIndex((one) => recordsOf(one, "after").length > 0);
  const [first, ...others] = [...around.slice(saying), ...around.slice(0, saying)];
  const sourced = first?.records.findLast(({ record }) => record.word === "after");
  if (first === undefined || sourced === undefined) return;
  const names = [first, ...others, first].map(({ name }) => name);
  const seeAlso = others.map(({ header, name }) => ({ place: header, role: name }));
  review.complain("after-cycle", placeAt(sourced.site, sourced.record.at), { names }, { seeAlso });
}
