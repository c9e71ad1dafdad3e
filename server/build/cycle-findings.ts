/** Jobs and hold points that wait for each other in a circle. */
import type { NamedDefinition } from "./definitions.ts";
import { recordsOf } from "./judgement.ts";
import type { Names } from "./names.ts";
import type { Replay } from "./replay/replay.ts";
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

/** Each circle once, at the `after:` of the first of its members by which it is met. */
export function complainOfCycles(replay: Replay): void {
  const { names } = replay;
  const settled = new Set<NamedDefinition>();
  const visit = (definition: NamedDefinition, path: readonly NamedDefinition[]): void => {
    const from = path.indexOf(definition);
    if (from >= 0) {
      complainOfCycle(replay, path.slice(from));
      return;
    }
    if (settled.has(definition)) return;
    for (const before of predecessorsOf(names, definition)) visit(before, [...path, definition]);
    settled.add(definition);
  };
  for (const kind of ["job", "hold"] as const)
    for (const definition of names.every(kind)) visit(definition, []);
}

function complainOfCycle(replay: Replay, around: readonly NamedDefinition[]): void {
  const [first, ...others] = around;
  if (first === undefined) return;
  const sourced = first.records.findLast(({ record }) => record.word === "after");
  const place = sourced === undefined ? first.header : placeAt(sourced.site, sourced.record.at);
  const names = [...around, first].map(({ name }) => name);
  const seeAlso = others.map(({ header, name }) => ({ place: header, role: name }));
  replay.complain("after-cycle", place, { names }, { seeAlso });
}
