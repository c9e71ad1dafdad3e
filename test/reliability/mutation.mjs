// `npm run mutation`: changes the programs' own code in small ways and sees whether the tests notice (mutation testing,
// with Stryker and its runner for vitest). Each change has its tests run anew: a folder takes from half an hour to hours.
// Stryker is installed into a folder that git ignores: nothing else needs it. What a run has found is kept beside it, so
// that the next one tries again only what has changed since, or what new tests may now notice.
//
//   node test/reliability/mutation.mjs                             every folder
//   node test/reliability/mutation.mjs trade                       one folder
//   node test/reliability/mutation.mjs server/build/intervals.ts   one or more files
import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { keep, kept, root, today } from "./figures.mjs";
import { installed } from "./installed.mjs";

const STRYKER = "9.6.1";

/** The folders whose code is changed, and the tests that should notice. */
const GROUPS = {
  quantities: {
    tests: [
      "test/quantities/*.test.ts",
      "test/standards/units.test.ts",
      "test/standards/measurement-uncertainty.test.ts",
    ],
  },
  // What compares with programs from outside starts them, for each change anew.
  trade: {
    tests: [
      "test/trade/*.test.ts",
      "test/standards/*.test.ts",
      "test/expressions/generated-functions-page.test.ts",
    ],
    besides: ["test/standards/units-programs.test.ts"],
  },
  build: {
    tests: ["test/build/*.test.ts", "test/rules/examples.test.ts", "test/rules/stories/**/*.test.ts"],
  },
  rules: { tests: ["test/rules/*.test.ts", "test/rules/stories/**/*.test.ts"] },
};

const KILLED = ["Killed", "Timeout"];
const ALIVE = ["Survived", "NoCoverage"];

/**
 * @param home where Stryker is installed
 * @param files to be changed, relative to the root; patterns too
 */
function mutate(home, group, files) {
  const { tests, besides = [] } = GROUPS[group];
  const [config, runner, report, known] = ["json", "runner.mjs", "report.json", "known.json"].map((ending) =>
    path.join(home, `${group}.${ending}`),
  );
  const options = {
    include: tests,
    exclude: besides,
    pool: "threads",
    isolate: false,
    testTimeout: 60_000,
  };
  writeFileSync(runner, `export default ${JSON.stringify({ test: options })};\n`);
  const settings = {
    testRunner: "vitest",
    plugins: [path.join(home, "node_modules/@stryker-mutator/vitest-runner/dist/src/index.js")],
    mutate: files,
    concurrency: 1,
    coverageAnalysis: "perTest",
    // What runs once, as a file is loaded, has every test run anew for each change.
    ignoreStatic: true,
    incremental: true,
    incrementalFile: path.relative(root, known),
    disableTypeChecks: false,
    // A machine that others use is no reason to take a change for noticed.
    timeoutMS: 30_000,
    timeoutFactor: 4,
    tempDirName: ".cache/stryker",
    vitest: { configFile: path.relative(root, runner), related: false },
    reporters: ["json", "progress-append-only"],
    jsonReporter: { fileName: path.relative(root, report) },
    ignorePatterns: ["dist", "docs/pictures", "coverage", "*.vsix", ".vscode-test", ".cache"],
  };
  writeFileSync(config, JSON.stringify(settings));
  const words = [path.join(home, "node_modules/@stryker-mutator/core/bin/stryker.js"), "run", config];
  const { status } = spawnSync(process.execPath, words, {
    cwd: root,
    stdio: "inherit",
  });
  if (status !== 0) throw new Error(`Stryker ended with ${status} on ${group}`);
  return JSON.parse(readFileSync(report, "utf8"));
}

/** Counts of a file, and each change that no test noticed. */
function summary({ mutants }) {
  const having = (states) => mutants.filter(({ status }) => states.includes(status));
  const survivors = having(ALIVE).map(
    ({ location, mutatorName, replacement }) =>
      `${location.start.line}:${location.start.column} ${mutatorName} → ${String(replacement).replace(/\s+/g, " ").slice(0, 60)}`,
  );
  return {
    on: today(),
    killed: having(KILLED).length,
    timedOut: having(["Timeout"]).length,
    alive: survivors.length,
    ignored: having(["Ignored"]).length,
    survivors,
  };
}

/** The figures of the files that were run; those of others stay as they are. */
function runMutation(asked) {
  const home = installed("stryker", {
    "@stryker-mutator/core": STRYKER,
    "@stryker-mutator/vitest-runner": STRYKER,
  });
  const named = asked.length > 0 ? asked : Object.keys(GROUPS);
  const ran = {};
  for (const group of Object.keys(GROUPS)) {
    const within = `server/${group}/`;
    const whole = named.includes(group);
    const files = whole ? [`${within}**/*.ts`] : named.filter((name) => name.startsWith(within));
    if (files.length === 0) continue;
    // What is known of other files stands in the report too.
    const changed = Object.entries(mutate(home, group, files).files).filter(
      ([file]) => whole || files.includes(file),
    );
    for (const [file, figures] of changed) ran[file] = summary(figures);
    keep("mutation", { files: { ...kept().mutation?.files, ...ran } });
  }
  return ran;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href)
  for (const [file, { killed, alive, survivors }] of Object.entries(runMutation(process.argv.slice(2)))) {
    console.log(`${file}: ${killed} of ${killed + alive} changes were noticed`);
    for (const survivor of survivors) console.log(`  not noticed: ${survivor}`);
  }
