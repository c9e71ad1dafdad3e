// The long run of the properties of the grammar: `node test/long/grammar.mjs [CASES]`, 50,000 cases by default.
// Prints the cases and the result; a failure prints its seed, which COTTER_SEED sets again.
import { spawn } from "node:child_process";
import path from "node:path";
import { fileURLToPath } from "node:url";

const root = path.dirname(path.dirname(path.dirname(fileURLToPath(import.meta.url))));
const cases = process.argv[2] ?? "50000";
const files = ["document", "properties", "printer", "facts"].map((name) => `test/grammar/${name}.test.ts`);
const started = Date.now();
const child = spawn(process.execPath, [path.join(root, "node_modules/vitest/vitest.mjs"), "run", ...files], {
  cwd: root,
  stdio: "inherit",
  env: { ...process.env, COTTER_CASES: cases },
});
child.on("close", (code) => {
  const minutes = ((Date.now() - started) / 60_000).toFixed(1);
  console.log(
    `${cases} cases of the grammar's properties in ${minutes} min: ${code === 0 ? "passed" : "FAILED"}`,
  );
  process.exitCode = code ?? 1;
});
