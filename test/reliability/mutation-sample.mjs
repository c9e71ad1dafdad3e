// Mutation testing of a draw: some changes out of all that can be made to a folder, each with the same chance, and what
// that says about the rest.
import { nameOf } from "./drawn-mutants.mjs";
import { keep, kept, today } from "./figures.mjs";
import { counted, isAlive, mutate, survivorsOf } from "./stryker.mjs";

/**
 * Tries the changes of a folder that are drawn, and keeps the figures. What the tests that were seen to reach a change do
 * not notice is tried once more with all tests. A stretch that goes on where the kept one of the same seed ended is
 * counted with it; a draw of another seed stands beside the one before, whose survivors the tests may have been written
 * for.
 */
export function runSample(group, draw) {
  const first = mutantsIn(mutate(group, [`server/${group}/**/*.ts`], draw));
  const { ignored, ...tried } = counted(first);
  const again = triedAgain(group, draw, first.filter(isAlive));
  const noticedThen = counted(again);
  const fresh = {
    on: today(),
    ...draw,
    all: first.length - ignored,
    ignored,
    killed: tried.killed + noticedThen.killed,
    timedOut: tried.timedOut + noticedThen.timedOut,
    byAllTests: noticedThen.killed,
    alive: noticedThen.alive,
    survivors: again.flatMap((mutant) => survivorsOf([mutant]).map((each) => `${mutant.fileName}:${each}`)),
  };
  const { samples = {}, ...others } = kept().mutation ?? {};
  const figures = joined(samples[group], fresh);
  keep("mutation", { ...others, samples: { ...samples, [group]: figures } });
  return figures;
}

/** The changes of a report, each with its file. */
function mutantsIn({ files }) {
  return Object.entries(files).flatMap(([fileName, { mutants }]) =>
    mutants.map((mutant) => ({ ...mutant, fileName })),
  );
}

/** The same changes, as they stand once all tests were run on each. */
function triedAgain(group, draw, mutants) {
  if (mutants.length === 0) return [];
  const named = mutants.map((mutant) => nameOf(countedFromNought(mutant)));
  const files = [...new Set(mutants.map(({ fileName }) => fileName))];
  const again = mutantsIn(mutate(group, files, { ...draw, named }));
  const { killed, alive } = counted(again);
  if (killed + alive !== mutants.length)
    throw new Error(`${killed + alive} of ${mutants.length} changes were tried again`);
  return again;
}

/** A report counts lines and columns from 1, who draws from 0. */
function countedFromNought({ location: { start, end }, ...mutant }) {
  const moved = ({ line, column }) => ({ line: line - 1, column: column - 1 });
  return { ...mutant, location: { start: moved(start), end: moved(end) } };
}

function joined(before, fresh) {
  if (before === undefined) return fresh;
  if (before.seed !== fresh.seed) return { ...fresh, earlier: before };
  if (before.to !== fresh.from) return { ...fresh, earlier: before.earlier };
  return {
    ...fresh,
    from: before.from,
    killed: before.killed + fresh.killed,
    timedOut: before.timedOut + fresh.timedOut,
    byAllTests: (before.byAllTests ?? 0) + fresh.byAllTests,
    alive: before.alive + fresh.alive,
    survivors: [...before.survivors, ...fresh.survivors],
    earlier: before.earlier,
  };
}

/** The interval that holds the true share of noticed changes in 95 of 100 draws, as Wilson has it. */
export function wilson(killed, drawn) {
  const z = 1.959964;
  const share = killed / drawn;
  const middle = (share + z ** 2 / (2 * drawn)) / (1 + z ** 2 / drawn);
  const half =
    (z / (1 + z ** 2 / drawn)) * Math.sqrt((share * (1 - share)) / drawn + z ** 2 / (4 * drawn ** 2));
  return [Math.max(0, middle - half), Math.min(1, middle + half)];
}
