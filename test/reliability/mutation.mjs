// `npm run mutation`: changes the programs' own code in small ways and sees whether the tests notice (mutation testing,
// with Stryker and its runner for vitest). Of the core some files, since each of the changes has its tests run anew.
// Stryker is installed into a folder that git ignores: nothing else needs it.
//
//   node test/reliability/mutation.mjs             every group
//   node test/reliability/mutation.mjs trade       that group
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { keep, root } from "./figures.mjs";

const home = path.join(root, "node_modules/.cache/stryker");
const STRYKER = "9.6.1";

/** What is changed, and the tests that should notice. */
const GROUPS = {
  quantities: {
    mutate: ["server/quantities/verdict.ts", "server/quantities/wear.ts"],
    tests: ["test/quantities/*.test.ts"],
  },
  trade: {
    mutate: ["server/trade/friction.ts", "server/trade/growth.ts", "server/trade/strength-class.ts"],
    tests: ["test/trade/*.test.ts", "test/standards/tightening.test.ts"],
  },
  build: {
    mutate: ["server/build/gauge-check.ts", "server/build/intervals.ts"],
    tests: ["test/build/gauges.test.ts", "test/build/care.test.ts", "test/rules/examples.test.ts"],
  },
  rules: {
    mutate: ["server/rules/severity-setting.ts", "server/rules/words.ts"],
    tests: ["test/rules/*.test.ts"],
  },
};

const KILLED = ["Killed", "Timeout"];
const ALIVE = ["Survived", "NoCoverage"];

function install() {
  if (existsSync(path.join(home, "node_modules/@stryker-mutator/vitest-runner"))) return;
  mkdirSync(home, { recursive: true });
  writeFileSync(path.join(home, "package.json"), '{"private":true}\n');
  const packages = ["core", "vitest-runner"].map((name) => `@stryker-mutator/${name}@${STRYKER}`);
  const { status } = spawnSync("npm", ["install", "--no-audit", "--no-fund", ...packages], {
    cwd: home,
    stdio: "inherit",
  });
  if (status !== 0) throw new Error("Stryker could not be installed");
}

function mutate(name, { mutate: files, tests }) {
  const [config, runner, report] = ["json", "runner.mjs", "report.json"].map((ending) =>
    path.join(home, `${name}.${ending}`),
  );
  const options = { include: tests, pool: "threads", isolate: false, testTimeout: 60_000 };
  writeFileSync(runner, `export default ${JSON.stringify({ test: options })};\n`);
  const settings = {
    testRunner: "vitest",
    plugins: [path.join(home, "node_modules/@stryker-mutator/vitest-runner/dist/src/index.js")],
    mutate: files,
    concurrency: 1,
    coverageAnalysis: "perTest",
    // What runs once, as a file is loaded, has every test run anew for each change.
    ignoreStatic: true,
    disableTypeChecks: false,
    tempDirName: ".cache/stryker",
    vitest: { configFile: path.relative(root, runner), related: false },
    reporters: ["json"],
    jsonReporter: { fileName: path.relative(root, report) },
    ignorePatterns: ["dist", "docs/pictures", "coverage", "*.vsix", ".vscode-test", ".cache"],
  };
  writeFileSync(config, JSON.stringify(settings));
  const words = [path.join(home, "node_modules/@stryker-mutator/core/bin/stryker.js"), "run", config];
  const { status } = spawnSync(process.execPath, words, {
    cwd: root,
    stdio: ["ignore", "ignore", "inherit"],
  });
  if (status !== 0) throw new Error(`Stryker ended with ${status} on ${name}`);
  return JSON.parse(readFileSync(report, "utf8"));
}

/** Counts, and each change that no test noticed. */
function summary(name, report) {
  const all = Object.entries(report.files).flatMap(([file, { mutants }]) =>
    mutants.map((one) => ({ file, ...one })),
  );
  const killed = all.filter(({ status }) => KILLED.includes(status)).length;
  const alive = all.filter(({ status }) => ALIVE.includes(status));
  const survivors = alive.map(
    ({ file, location, mutatorName, replacement }) =>
      `${file}:${location.start.line} ${mutatorName} → ${String(replacement).replace(/\s+/g, " ").slice(0, 60)}`,
  );
  const ignored = all.filter(({ status }) => status === "Ignored").length;
  return { name, files: Object.keys(report.files), killed, alive: alive.length, ignored, survivors };
}

function runMutation(names = Object.keys(GROUPS)) {
  install();
  return names.map((name) => {
    const figures = summary(name, mutate(name, GROUPS[name]));
    keep(`mutation: ${name}`, figures);
    return figures;
  });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const named = process.argv.slice(2);
  for (const { name, killed, alive, survivors } of runMutation(named.length > 0 ? named : undefined)) {
    console.log(`${name}: ${killed} of ${killed + alive} changes were noticed`);
    for (const survivor of survivors) console.log(`  not noticed: ${survivor}`);
  }
}
