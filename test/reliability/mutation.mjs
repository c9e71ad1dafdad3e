// `npm run mutation`: changes the programs' own code in small ways and sees whether the tests notice (mutation testing).
// Each change has its tests run anew: a folder takes from half an hour to days. So there are two ways: each change of a
// few files, or a draw of the changes of all files of a folder.
// What the tests of a draw do not notice is tried once more with all tests of the folder: those that Stryker has seen to
// reach a change are too few where something is made once and then kept.
// What a run of files has found is kept beside Stryker, so that the next one tries again only what has changed since, or
// what new tests may now notice.
//
//   node test/reliability/mutation.mjs                             every file of every folder
//   node test/reliability/mutation.mjs trade                       every file of one folder
//   node test/reliability/mutation.mjs server/build/intervals.ts   one or more files
//   node test/reliability/mutation.mjs sample                      a draw from each folder
//   node test/reliability/mutation.mjs sample trade --share 0.05   a larger one from one folder
import { pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import { keep, kept, today } from "./figures.mjs";
import { runSample } from "./mutation-sample.mjs";
import { counted, GROUPS, mutate, survivorsOf } from "./stryker.mjs";

/** The figures of the files that were run; those of others stay as they are. */
function runMutation(asked) {
  const named = asked.length > 0 ? asked : Object.keys(GROUPS);
  const ran = {};
  for (const group of Object.keys(GROUPS)) {
    const within = `server/${group}/`;
    const whole = named.includes(group);
    const files = whole ? [`${within}**/*.ts`] : named.filter((name) => name.startsWith(within));
    if (files.length === 0) continue;
    // What is known of other files stands in the report too.
    const changed = Object.entries(mutate(group, files).files).filter(
      ([file]) => whole || files.includes(file),
    );
    for (const [file, { mutants }] of changed)
      ran[file] = { on: today(), ...counted(mutants), survivors: survivorsOf(mutants) };
    keep("mutation", { ...kept().mutation, files: { ...kept().mutation?.files, ...ran } });
  }
  return ran;
}

function tell(what, { killed, alive, survivors }) {
  console.log(`${what}: ${killed} of ${killed + alive} changes were noticed`);
  for (const survivor of survivors) console.log(`  not noticed: ${survivor}`);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      seed: { type: "string", default: "1" },
      from: { type: "string", default: "0" },
      share: { type: "string", default: "0.01" },
    },
  });
  const [first, ...rest] = positionals;
  if (first === "sample") {
    const from = Number(values.from);
    const draw = { seed: Number(values.seed), from, to: from + Number(values.share) };
    for (const group of rest.length > 0 ? rest : Object.keys(GROUPS)) tell(group, runSample(group, draw));
  } else for (const [file, figures] of Object.entries(runMutation(positionals))) tell(file, figures);
}
