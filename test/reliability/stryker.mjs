// Stryker with its runner for vitest, which changes the programs' own code in small ways and sees whether tests notice.
// It is installed into a folder that git ignores: nothing else needs it.
import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { root } from "./figures.mjs";
import { installed } from "./installed.mjs";

const STRYKER = "9.6.1";

/**
 * The folders whose code is changed, and the tests that should notice.
 *
 * `tests` are a folder's own, and of floors above what leads there: of these Stryker runs those that were seen to reach a
 * change. It sees too few where something is made once and then kept, since only the first to ask for it reaches what
 * makes it. So what they do not notice in a draw is tried once more with all of them, whichever reach it, with those of
 * `slow`, and with those of the floor above that are named by `above`.
 */
export const GROUPS = {
  quantities: {
    tests: [
      "test/quantities/*.test.ts",
      "test/standards/units.test.ts",
      "test/standards/measurement-uncertainty.test.ts",
    ],
  },
  trade: {
    tests: [
      "test/trade/*.test.ts",
      "test/standards/*.test.ts",
      "test/expressions/*.test.ts",
      "test/build/identification.test.ts",
      "test/build/joints-mechanics.test.ts",
      "test/command-line/identify.test.ts",
      "test/rules/stories/identities.test.ts",
    ],
  },
  build: {
    tests: [
      "test/build/*.test.ts",
      "test/rules/examples.test.ts",
      "test/rules/{messages,messages-by-case,shown-beside,unread-values,words-of-a-release}.test.ts",
      "test/rules/stories/**/*.test.ts",
    ],
    slow: ["test/build/going-on*.test.ts"],
    above: ["test/rules/*.test.ts"],
  },
  rules: {
    tests: [
      "test/rules/*.test.ts",
      "test/rules/stories/**/*.test.ts",
      "test/samples/mistakes.test.ts",
      "test/samples/printed.test.ts",
      "test/language-server/actions.test.ts",
    ],
    slow: ["test/rules/complaints-going-on.test.ts"],
  },
};

/** What compares with programs from outside starts them, for each change anew. */
const NEVER = ["test/standards/units-programs.test.ts"];

const KILLED = ["Killed", "Timeout"];
const ALIVE = ["Survived", "NoCoverage"];

/**
 * @param files to be changed, relative to the root; patterns too
 * @param draw which of the changes are tried; without it all are, and those whose answer is known are not tried again. With
 *   `named`, names of changes (`nameOf`), it is these alone, each with all tests
 * @returns what Stryker reports
 */
export function mutate(group, files, draw) {
  const home = installed("stryker", {
    "@stryker-mutator/core": STRYKER,
    "@stryker-mutator/vitest-runner": STRYKER,
  });
  const { tests, slow = [], above = [] } = GROUPS[group];
  const all = draw?.named !== undefined;
  const own = (ending) => path.join(home, `${group}${draw === undefined ? "" : "-draw"}.${ending}`);
  const options = {
    include: all ? [...tests, ...above] : tests,
    exclude: all ? NEVER : [...slow, ...NEVER],
    pool: "threads",
    isolate: false,
    testTimeout: 60_000,
  };
  const order = JSON.stringify(path.join(root, "test/reliability/quick-first.mjs"));
  writeFileSync(
    own("runner.mjs"),
    `import { QuickFirst } from ${order};\nconst test = ${JSON.stringify(options)};\nexport default { test: { ...test, sequence: { sequencer: QuickFirst } } };\n`,
  );
  const settings = {
    testRunner: all ? "all-tests" : "vitest",
    plugins: [
      ...(all ? [path.join(root, "test/reliability/all-tests.mjs")] : []),
      path.join(home, "node_modules/@stryker-mutator/vitest-runner/dist/src/index.js"),
      path.join(root, "test/reliability/drawn-mutants.mjs"),
    ],
    ...(draw === undefined
      ? { incremental: true, incrementalFile: path.relative(root, own("known.json")) }
      : { checkers: ["drawn"], draw }),
    mutate: files,
    concurrency: 1,
    // Which of a thousand tests reaches which of fifteen thousand changes takes gigabytes to tell.
    testRunnerNodeArgs: ["--max-old-space-size=12288"],
    // What runs once, as a file is loaded, has every test run anew for each change.
    coverageAnalysis: "perTest",
    ignoreStatic: true,
    disableTypeChecks: false,
    // A machine that others use is no reason to take a change for noticed.
    timeoutMS: 30_000,
    timeoutFactor: 4,
    dryRunTimeoutMinutes: 30,
    tempDirName: ".cache/stryker",
    vitest: { configFile: path.relative(root, own("runner.mjs")), related: false },
    reporters: ["json", "progress-append-only"],
    jsonReporter: { fileName: path.relative(root, own("report.json")) },
    ignorePatterns: ["dist", "docs/pictures", "coverage", "*.vsix", ".vscode-test", ".cache"],
  };
  writeFileSync(own("json"), JSON.stringify(settings));
  const words = [path.join(home, "node_modules/@stryker-mutator/core/bin/stryker.js"), "run", own("json")];
  const { status } = spawnSync(process.execPath, words, { cwd: root, stdio: "inherit" });
  if (status !== 0) throw new Error(`Stryker ended with ${status} on ${group}`);
  return JSON.parse(readFileSync(own("report.json"), "utf8"));
}

export function isAlive({ status }) {
  return ALIVE.includes(status);
}

/** How many changes were noticed, and how many were not; what is neither was not tried. */
export function counted(mutants) {
  const having = (states) => mutants.filter(({ status }) => states.includes(status)).length;
  return {
    killed: having(KILLED),
    timedOut: having(["Timeout"]),
    alive: having(ALIVE),
    ignored: having(["Ignored"]),
  };
}

/** Each change that no test noticed, by its place in the file. */
export function survivorsOf(mutants) {
  return mutants
    .filter(isAlive)
    .map(
      ({ location, mutatorName, replacement }) =>
        `${location.start.line}:${location.start.column} ${mutatorName} → ${String(replacement).replace(/\s+/g, " ").slice(0, 60)}`,
    );
}
