// The long run of the properties: `node test/long/properties.mjs [CASES [BUILDS]]`, by default 50,000 cases of the grammar
// and 100 of builds that go on from edit to edit. Prints the cases and the result; a failure prints its seed, which
// COTTER_SEED sets again for the grammar. What each run came to is kept for docs/reliability.md. A count of 0 leaves a run
// out.
import { spawnSync } from "node:child_process";
import path from "node:path";
import { keep, kept, root, today } from "../reliability/figures.mjs";

const vitest = path.join(root, "node_modules/vitest/vitest.mjs");
const [cases = "50000", builds = "100"] = process.argv.slice(2);

const RUNS = [
  {
    name: "grammar",
    count: Number(cases),
    what: `${cases} cases of the grammar's properties`,
    words: ["document", "properties", "printer", "facts"].map((name) => `test/grammar/${name}.test.ts`),
    settings: { COTTER_CASES: cases },
  },
  {
    name: "builds",
    count: Number(builds),
    what: `${builds} cases of builds that go on`,
    words: ["test/build/going-on.test.ts", "test/rules/complaints-going-on.test.ts", "--testTimeout=3600000"],
    settings: { COTTER_RUNS: builds },
  },
];

for (const { name, count, what, words, settings } of RUNS) {
  if (count === 0) continue;
  const started = Date.now();
  const env = { ...process.env, ...settings };
  const { status } = spawnSync(process.execPath, [vitest, "run", ...words], {
    cwd: root,
    stdio: "inherit",
    env,
  });
  const minutes = ((Date.now() - started) / 60_000).toFixed(1);
  keep("properties", {
    ...kept().properties,
    [name]: { on: today(), cases: count, minutes: Number(minutes), passed: status === 0 },
  });
  console.log(`${what} in ${minutes} min: ${status === 0 ? "passed" : "FAILED"}`);
  if (status !== 0) process.exitCode = status ?? 1;
}
