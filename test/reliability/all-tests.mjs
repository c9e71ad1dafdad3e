// A test runner for Stryker that has every change meet every test: the runner for vitest, which tells which test reaches
// which change whether it is asked or not, without what it tells. Stryker then has nothing to choose tests by, and a
// change is there from the moment that a file is loaded.
import path from "node:path";
import { root } from "./figures.mjs";

const vitest = await import(
  path.join(root, "node_modules/.cache/stryker/node_modules/@stryker-mutator/vitest-runner/dist/src/index.js")
);
const [{ factory: runnerOf }] = vitest.strykerPlugins;

function allTests(injector) {
  const runner = runnerOf(injector);
  const dryRun = runner.dryRun.bind(runner);
  runner.dryRun = async (options) => ({ ...(await dryRun(options)), mutantCoverage: undefined });
  return runner;
}
allTests.inject = runnerOf.inject;

export const strykerPlugins = [{ kind: "TestRunner", name: "all-tests", factory: allTests }];
