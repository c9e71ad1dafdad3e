// The long run of the properties: `node test/long/properties.mjs [CASES [BUILDS]]`, by default 50,000 cases of the grammar
// and 100 of builds that go on from edit to edit. Prints the cases and the result; a failure prints its seed, which
// COTTER_SEED sets again for the grammar.
import { spawnSync } from "node:child_process";
import path from "node:path";
import { fileURLToPath } from "node:url";

const root = path.dirname(path.dirname(path.dirname(fileURLToPath(import.meta.url))));
const vitest = path.join(root, "node_modules/vitest/vitest.mjs");
const [cases = "50000", builds = "100"] = process.argv.slice(2);

const RUNS = [
  {
    what: `${cases} cases of the grammar's properties`,
    words: ["document", "properties", "printer", "facts"].map((name) => `test/grammar/${name}.test.ts`),
    settings: { COTTER_CASES: cases },
  },
  {
    what: `${builds} cases of builds that go on`,
    words: ["test/build/going-on.test.ts", "test/rules/complaints-going-on.test.ts", "--testTimeout=3600000"],
    settings: { COTTER_RUNS: builds },
  },
];

for (const { what, words, settings } of RUNS) {
  const started = Date.now();
  const env = { ...process.env, ...settings };
  const { status } = spawnSync(process.execPath, [vitest, "run", ...words], {
    cwd: root,
    stdio: "inherit",
    env,
  });
  const minutes = ((Date.now() - started) / 60_000).toFixed(1);
  console.log(`${what} in ${minutes} min: ${status === 0 ? "passed" : "FAILED"}`);
  if (status !== 0) process.exitCode = status ?? 1;
}
