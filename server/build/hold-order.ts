/** Hold points among hold points and jobs: what comes before what, and what a hold point stops. */
import type { ReferenceNode } from "../../grammar/syntax.ts";
import { coverOf } from "./cover.ts";
import type { NamedDefinition } from "./definitions.ts";
import { recordOf, recordsOf } from "./judgement.ts";
import type { Standing } from "./standing.ts";
import type { HoldState, JobState } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";
import { isWithin } from "./tree/node.ts";

type Defined = Pick<Standing, "names">;

/** Not released, or its release has lapsed. */
export function isShut({ released, lapsed }: HoldState): boolean {
  return released === undefined || lapsed !== undefined;
}

/** The hold points and jobs that a hold point, job or joint names in its `after:`. */
export function predecessorsOf({ names }: Defined, definition: NamedDefinition): readonly NamedDefinition[] {
  return recordsOf(definition, "after").flatMap(({ references }) =>
    references.flatMap((reference) => hereNamed({ names }, reference) ?? []),
  );
}

/** True where the first has to come before the second, directly or through others. */
export function comesBefore(defined: Defined, first: NamedDefinition, second: NamedDefinition): boolean {
  const seen = new Set<NamedDefinition>();
  const waiting = [...predecessorsOf(defined, second)];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (next === first) return true;
    if (seen.has(next)) continue;
    seen.add(next);
    waiting.push(...predecessorsOf(defined, next));
  }
  return false;
}

/**
 * The jobs whose end a hold point waits for when it asks for jobs: those on something that it covers, but for those that
 * come after it or that a hold point stops which does not come before it.
 */
export function jobsAskedBy(standing: Standing, hold: NamedDefinition): readonly JobState[] {
  const { whole, nodes } = coverOf(standing, hold);
  const later = [...standing.names.every("hold")].filter((other) => !comesBefore(standing, other, hold));
  const stopped = later.flatMap((other) => jobsStoppedBy(standing, other));
  const behind = allBehind(standing, [hold, ...stopped]);
  const barred = new Set([...behind, ...stopped]);
  return [...standing.jobs.values()].filter(
    ({ definition }) =>
      !barred.has(definition) && (whole || subjectsOf(standing, definition).some((node) => nodes.has(node))),
  );
}

/** Every job and hold point that comes after one of these, directly or through others. */
function allBehind(defined: Defined, starts: readonly NamedDefinition[]): ReadonlySet<NamedDefinition> {
  const behind = new Map<NamedDefinition, NamedDefinition[]>();
  for (const kind of ["job", "hold"] as const) {
    for (const definition of defined.names.every(kind)) {
      for (const earlier of predecessorsOf(defined, definition)) {
        const known = behind.get(earlier);
        if (known === undefined) behind.set(earlier, [definition]);
        else known.push(definition);
      }
    }
  }
  const found = new Set<NamedDefinition>();
  const waiting = starts.flatMap((start) => behind.get(start) ?? []);
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (found.has(next)) continue;
    found.add(next);
    waiting.push(...(behind.get(next) ?? []));
  }
  return found;
}

/** The jobs that a hold point names in `stops:`. */
export function jobsStoppedBy({ names }: Defined, hold: NamedDefinition): readonly NamedDefinition[] {
  return recordsOf(hold, "stops").flatMap(({ jobs }) =>
    jobs.flatMap((reference) => names.named("job", reference.text) ?? []),
  );
}

/**
 * Whether a hold point stops the running of a thing: of what it names, of everything above that, since who runs the
 * vehicle runs its engine, and of everything below, unless a hold point of its own is there for that: where one stops the
 * engine and another the vehicle, the first decides about the engine alone.
 */
export function stopsRunning(defined: Defined, hold: NamedDefinition, run: readonly TreeNode[]): boolean {
  return runningStoppedBy(defined, hold).some((held) =>
    run.some((node) => {
      if (isAtOrBelow(held, node)) return true;
      if (!isAtOrBelow(node, held)) return false;
      return ![...defined.names.every("hold")].some((other) =>
        runningStoppedBy(defined, other).some(
          (nearer) => nearer !== held && isAtOrBelow(nearer, held) && isAtOrBelow(node, nearer),
        ),
      );
    }),
  );
}

function runningStoppedBy({ names }: Defined, hold: NamedDefinition): readonly TreeNode[] {
  return recordsOf(hold, "stops").flatMap(({ ran }) =>
    ran.flatMap((reference) => names.things(reference, RUNNABLE)),
  );
}

const RUNNABLE = ["assembly", "part", "joint", "system", "circuit"] as const;

function isAtOrBelow(node: TreeNode, above: TreeNode): boolean {
  return above.kind === "vehicle" || isWithin(node.path, above.path);
}

/** The shut hold points that are first in their order: those of these, and before these, before which no other is shut. */
export function firstShut(
  standing: Standing,
  among: readonly NamedDefinition[],
): NamedDefinition | undefined {
  const shut = [...standing.holds.values()]
    .filter(isShut)
    .map(({ definition }) => definition)
    .filter((hold) => among.some((other) => other === hold || comesBefore(standing, hold, other)));
  const first = shut.filter((hold) => !shut.some((other) => comesBefore(standing, other, hold)));
  return (first.length > 0 ? first : shut).sort(byPlan)[0];
}

function byPlan(a: NamedDefinition, b: NamedDefinition): number {
  const [first, second] = [a, b].map((hold) => recordOf(hold, "planned")?.date ?? "9999-12-31");
  if (first === undefined || second === undefined || first === second) return a.order - b.order;
  return first < second ? -1 : 1;
}

function subjectsOf({ names }: Defined, job: NamedDefinition): readonly TreeNode[] {
  return recordsOf(job, "on").flatMap(({ references }) =>
    references.flatMap((reference) => names.targets(reference, RUNNABLE).map(({ node }) => node)),
  );
}

function hereNamed({ names }: Defined, reference: ReferenceNode): NamedDefinition | undefined {
  return names.named("hold", reference.text) ?? names.named("job", reference.text);
}
