// `npm run reliability`: the long form of the checks that `npm test` has in short, and the page of what came of them.
//
//   node test/reliability/run.mjs                          all but mutation testing, which is `npm run mutation`: the
//                                                          parts editing, memory, limits, disk, hostile, network,
//                                                          regexes and dependencies
//   node test/reliability/run.mjs editing --edits 100000   one part
//   node test/reliability/run.mjs page                     the page alone, from what was found before
import { spawnSync } from "node:child_process";
import { parseArgs } from "node:util";
import { FakeEditor } from "./fake-editor.mjs";
import { keep, root } from "./figures.mjs";
import { fillDisk } from "./full-disk.mjs";
import { COMMANDS, callAll, FORMS } from "./hostile.mjs";
import { runLimits } from "./limits.mjs";
import { traceNetwork } from "./network.mjs";
import { writePage } from "./page.mjs";
import { copyPrograms } from "./programs.mjs";
import { checkRegexes } from "./regexes.mjs";
import { ALLOWED, bundled } from "./sbom.mjs";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    edits: { type: "string", default: "20000" },
    minutes: { type: "string", default: "30" },
    seed: { type: "string", default: "1" },
    sample: { type: "string", default: "trials" },
  },
});

copyPrograms();

const PARTS = {
  editing: () => edited("evening", 250),
  memory: () => edited(values.sample, 1000),
  limits: async () => ({ results: await runLimits() }),
  disk: fillDisk,
  hostile: () => callAll(COMMANDS, FORMS),
  network: traceNetwork,
  regexes: checkRegexes,
  dependencies: () => {
    const packages = bundled();
    const audit = spawnSync("npm", ["audit", "--omit=dev"], { cwd: root, encoding: "utf8", timeout: 60_000 });
    return {
      packages: packages.map(({ name, version, licence }) => `${name} ${version} (${licence})`),
      refused: packages.filter(({ licence }) => !ALLOWED.includes(licence)).map(({ name }) => name),
      audit: (audit.stdout.trim() || "the registry did not answer").split("\n").at(-1),
    };
  },
};

const wanted = positionals.length > 0 ? positionals : Object.keys(PARTS);
for (const name of wanted.filter((each) => each !== "page")) {
  const part = PARTS[name];
  if (part === undefined) throw new Error(`there is no part ${name}: ${Object.keys(PARTS).join(", ")}`);
  const figures = await part();
  keep(name, figures);
  const faults = [
    ...(figures.faults ?? []),
    ...(figures.results ?? []).flatMap(({ server }) => server.faults),
  ];
  const tried = figures.possible === false ? `not possible here: ${figures.why}` : "no fault";
  console.log(`${name}: ${faults.length === 0 ? tried : faults.join("\n")}`);
  if (faults.length > 0 || (figures.refused ?? []).length > 0) process.exitCode = 1;
}
writePage();

/** A session on a sample, with what the server held in the meantime. */
async function edited(sample, compareEvery) {
  const seed = Number(values.seed);
  const editor = new FakeEditor({ seed, sample, probed: true });
  const began = Date.now();
  const until = began + Number(values.minutes) * 60_000;
  await editor.work({ edits: Number(values.edits), until, compareEvery });
  const { counts, faults, memory, heaps } = editor;
  return { seed, sample, minutes: round((Date.now() - began) / 60_000), counts, memory, heaps, faults };
}

function round(figure) {
  return Math.round(figure * 10) / 10;
}
