// Measures the programs as they are shipped, and writes docs/performance.md. Asserts nothing.
//
//   npm run bench                            everything, some ten minutes
//   npm run bench -- --only edits,memory     parts of it; the page keeps the last figures of the others
//   npm run bench -- --only edits --lines 1000,20000 --rounds 3     fewer lengths of log, and fewer rounds of keys
//   npm run bench -- --edits 1000            how many edits the growth of memory is measured over; else 10,000
//   npm run bench -- --quick                 a few rounds of each on short logs, without peers; the page stays as it is
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { cpus, loadavg } from "node:os";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import { build } from "esbuild";
import { measureActivation } from "./activation.mjs";
import { measureEdits } from "./edits.mjs";
import { measureMemory } from "./memory.mjs";
import { pageOf } from "./page.mjs";
import { installPeers } from "./peers.mjs";
import { measureReading } from "./reading.mjs";
import { measureRequests } from "./requests.mjs";
import { measureSizes } from "./sizes.mjs";
import { measureStart } from "./start.mjs";

const root = path.dirname(path.dirname(path.dirname(fileURLToPath(import.meta.url))));
const cache = path.join(root, ".cache/bench");
const packageFile = path.join(root, "cotter.vsix");
const resultsFile = path.join(cache, "results.json");

const { values: options } = parseArgs({
  options: {
    only: { type: "string" },
    edits: { type: "string", default: "10000" },
    lines: { type: "string", default: "1000,20000,100000" },
    rounds: { type: "string", default: "15" },
    quick: { type: "boolean", default: false },
  },
});
const { quick } = options;

mkdirSync(cache, { recursive: true });
// A copy, so that a build in the meantime takes no part away from the programs that are measured.
const dist = path.join(cache, `dist-${process.pid}`);
process.once("exit", () => rmSync(dist, { recursive: true, force: true }));
cpSync(path.join(root, "dist"), dist, { recursive: true });
const server = path.join(dist, "server.cjs");
const cotter = path.join(dist, "cotter.cjs");
const { generateLog, Document } = await importBundled();

const PARTS = {
  edits: () => {
    const peers = quick ? { why: "left out" } : installPeers(path.join(cache, "peers"));
    if (peers.why !== undefined) console.log(`peers: ${peers.why}`);
    return measureEdits({
      program: server,
      generateLog,
      modules: peers.modules,
      lengths: quick ? [1000] : options.lines.split(",").map(Number),
      rounds: quick ? 2 : Number(options.rounds),
      keys: quick ? 5 : 8,
    });
  },
  requests: () =>
    measureRequests({ program: server, generateLog, lines: quick ? 1000 : 20_000, rounds: quick ? 10 : 150 }),
  reading: () =>
    measureReading({ generateLog, Document, lines: quick ? 5000 : 100_000, rounds: quick ? 2 : 5 }),
  start: () =>
    measureStart({
      program: cotter,
      generateLog,
      rounds: quick ? 3 : 15,
      longRounds: quick ? 1 : 3,
      long: quick ? 2000 : 100_000,
    }),
  memory: () =>
    measureMemory({
      program: server,
      generateLog,
      lines: quick ? 2000 : 100_000,
      edits: quick ? 60 : Number(options.edits),
      editedLines: 1000,
    }),
  // Of what is packaged (`npm run package`), if anything is.
  activation: () =>
    existsSync(packageFile)
      ? measureActivation({
          packageFile,
          dist,
          samples: path.join(root, "samples/roadster"),
          rounds: quick ? 1 : 7,
        })
      : undefined,
  sizes: () => measureSizes({ dist, packageFile, generateLog, sample: path.join(root, "samples/roadster") }),
};

const asked = options.only?.split(",") ?? Object.keys(PARTS);
const unknown = asked.filter((name) => !Object.hasOwn(PARTS, name));
if (unknown.length > 0) {
  console.error(`unknown: ${unknown.join(", ")}; the parts are ${Object.keys(PARTS).join(", ")}`);
  process.exit(2);
}

const ofThisRun = {};
for (const name of asked) {
  const before = loadavg()[0];
  console.log(`${name} …`);
  const measured = await PARTS[name]();
  const day = new Date().toISOString().slice(0, 10);
  console.log(
    JSON.stringify(measured, (_, value) => (typeof value === "number" ? Number(value.toFixed(2)) : value), 1),
  );
  ofThisRun[name] = { measured, day, load: [before, loadavg()[0]] };
}
if (!quick) {
  const before = existsSync(resultsFile) ? JSON.parse(readFileSync(resultsFile, "utf8")) : {};
  const results = { ...before, ...ofThisRun };
  if (before.edits !== undefined) results.edits = withOtherLengths(results.edits, before.edits);
  writeFileSync(resultsFile, JSON.stringify(results));
  const machine = { processor: cpus()[0]?.model.trim(), cores: cpus().length, node: process.version };
  const changes = readFileSync(new URL("changes.md", import.meta.url), "utf8");
  writeFileSync(path.join(root, "docs/performance.md"), pageOf(results, machine, changes));
}

/** Lengths of log that this run has left out keep the figures of the run before. */
function withOtherLengths(edits, before) {
  const measured = edits.measured.map(({ lines }) => lines);
  const others = before.measured.filter(({ lines }) => !measured.includes(lines));
  return { ...edits, measured: [...edits.measured, ...others].sort((a, b) => a.lines - b.lines) };
}

/** What is measured within this process: the generator of logs, and the reader. */
async function importBundled() {
  const outfile = path.join(dist, "reading.mjs");
  await build({
    stdin: {
      contents: `export { generateLog } from "./test/bench/generate-log.ts";
        export { Document } from "./grammar/document.ts";`,
      resolveDir: root,
    },
    bundle: true,
    platform: "node",
    format: "esm",
    outfile,
    logLevel: "error",
  });
  return import(pathToFileURL(outfile).href);
}
