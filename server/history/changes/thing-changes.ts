/** Things added, taken out and renamed. A branch that was copied, or goes as a whole, is told of once. */
import type { Change } from "./change.ts";
import { change, inAfter, inBefore } from "./change.ts";
import type { PairedThings, Thing } from "./things.ts";

export function thingChanges({ both, gone, come }: PairedThings): Change[] {
  const renamed = both.filter(({ before, after }) => before.ref !== after.ref);
  return [
    ...topsOf(come).map(({ thing, below }) =>
      change({
        ...about(thing),
        kind: "added",
        after: sayThing(thing, below),
        at: inAfter(thing.header),
      }),
    ),
    ...topsOf(gone).map(({ thing, below }) =>
      change({
        ...about(thing),
        kind: "removed",
        before: sayThing(thing, below),
        standsOut: isSafetyCritical(thing),
        at: inBefore(thing.header),
      }),
    ),
    ...renamed
      .filter(({ before, after }) => !followsAbove(before, after, renamed))
      .map(({ before, after }) =>
        change({
          ...about(after),
          kind: "renamed",
          before: before.ref,
          after: after.ref,
          at: inAfter(after.header),
        }),
      ),
  ];
}

function about({ ref, what, title }: Thing): Pick<Change, "ref" | "what" | "title"> {
  return { ref, what, title };
}

interface Top {
  readonly thing: Thing;
  /** How many came or went with it. */
  readonly below: number;
}

/** Those that no other of them stands above. */
function topsOf(things: readonly Thing[]): Top[] {
  const paths = new Set(things.flatMap(({ node, ref }) => (node === undefined ? [] : [ref])));
  const tops = new Map<string, number>();
  for (const { node, ref } of things) {
    const top = node && topAbove(ref, paths);
    if (top !== undefined) tops.set(top, (tops.get(top) ?? 0) + 1);
  }
  return things
    .filter(({ node, ref }) => node === undefined || topAbove(ref, paths) === undefined)
    .map((thing) => ({ thing, below: thing.node === undefined ? 0 : (tops.get(thing.ref) ?? 0) }));
}

function topAbove(path: string, paths: ReadonlySet<string>): string | undefined {
  let found: string | undefined;
  for (let dot = path.lastIndexOf("."); dot > 0; dot = path.lastIndexOf(".", dot - 1)) {
    const above = path.slice(0, dot);
    if (paths.has(above)) found = above;
  }
  return found;
}

function sayThing({ what, node }: Thing, below: number): string {
  const like = node?.copyOf === undefined ? "" : ` like ${node.copyOf}`;
  return `${what}${like}${below === 0 ? "" : ` with ${below} below it`}`;
}

function isSafetyCritical({ records }: Thing): boolean {
  return records.some(({ record }) => record.word === "safety");
}

/** Renamed only because what stands above it was. */
function followsAbove(
  before: Thing,
  after: Thing,
  renamed: readonly { readonly before: Thing; readonly after: Thing }[],
): boolean {
  return renamed.some(
    (other) =>
      other.before.node !== undefined &&
      before.ref.startsWith(`${other.before.ref}.`) &&
      after.ref === other.after.ref + before.ref.slice(other.before.ref.length),
  );
}
