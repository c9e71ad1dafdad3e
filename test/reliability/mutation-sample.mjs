// Mutation testing of a draw: some changes out of all that can be made to a folder, each with the same chance, and what
// that says about the rest.
import { keep, kept, today } from "./figures.mjs";
import { counted, mutate, survivorsOf } from "./stryker.mjs";

/**
 * Tries the changes of a folder that are drawn, and keeps the figures. A stretch that goes on where the kept one of the
 * same seed ended is counted with it; a draw of another seed stands beside the one before, whose survivors the tests may
 * have been written for.
 */
export function runSample(group, draw) {
  const files = Object.entries(mutate(group, [`server/${group}/**/*.ts`], draw).files);
  const mutants = files.flatMap(([, one]) => one.mutants);
  const { ignored, ...tried } = counted(mutants);
  const survivors = files.flatMap(([file, one]) => survivorsOf(one.mutants).map((each) => `${file}:${each}`));
  const fresh = { on: today(), ...draw, all: mutants.length - ignored, ignored, ...tried, survivors };
  const { samples = {}, ...others } = kept().mutation ?? {};
  const figures = joined(samples[group], fresh);
  keep("mutation", { ...others, samples: { ...samples, [group]: figures } });
  return figures;
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
