// `npm test`: builds, runs every `check:` script of package.json and the tests, side by side as far as there are
// cores. Prints a line for each, the words of those that failed, and how many passed and failed.
import { spawn } from "node:child_process";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { availableParallelism, tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { stripVTControlCharacters } from "node:util";

const root = path.dirname(path.dirname(fileURLToPath(import.meta.url)));
const { scripts } = JSON.parse(await readFile(path.join(root, "package.json"), "utf8"));
const scratch = await mkdtemp(path.join(tmpdir(), "cotter-test-"));
const resultsFile = path.join(scratch, "vitest.json");

/** A step that hangs is ended after this long. */
const limit = { milliseconds: 15 * 60_000, words: "15 minutes" };

const sum = { passed: 0, failed: 0, skipped: 0 };

/** Runs one command line. Answers with its exit code and all that it printed; never rejects. */
function run(command) {
  return new Promise((resolve) => {
    const child = spawn(command, {
      cwd: root,
      shell: true,
      // Its own process group, so that whatever it started ends with it.
      detached: process.platform !== "win32",
      stdio: ["ignore", "pipe", "pipe"],
      env: {
        ...process.env,
        PATH: `${path.join(root, "node_modules/.bin")}${path.delimiter}${process.env.PATH}`,
        CI: "true",
        NO_COLOR: "1",
      },
    });
    let output = "";
    const end = () => {
      try {
        process.kill(-child.pid, "SIGKILL");
      } catch {
        child.kill("SIGKILL");
      }
    };
    const clock = setTimeout(() => {
      output += `\nStill running after ${limit.words}: ended.\n`;
      end();
    }, limit.milliseconds);
    process.once("exit", end);
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding("utf8").on("data", (chunk) => (output += chunk));
    }
    child.on("error", (error) => (output += error.message));
    child.on("close", (code) => {
      clearTimeout(clock);
      process.removeListener("exit", end);
      resolve({ code: code ?? 1, output: stripVTControlCharacters(output).trim() });
    });
  });
}

function report(name, result, seconds, detail = "") {
  const verdict = result.code === 0 ? "ok" : "FAILED";
  console.log(`${verdict.padEnd(7)} ${name.padEnd(12)} ${seconds.padStart(6)}  ${detail}`.trimEnd());
  if (result.code !== 0) console.log(`\n${result.output}\n`);
}

async function timed(work) {
  const start = performance.now();
  const result = await work();
  return [result, `${((performance.now() - start) / 1000).toFixed(1)} s`];
}

/** A step that counts as one test. */
async function runStep(name, command) {
  const [result, seconds] = await timed(() => run(command));
  report(name, result, seconds);
  if (result.code === 0) sum.passed++;
  else sum.failed++;
}

/** The tests themselves, counted one by one. A run that executed none has failed. */
async function runTests() {
  const [result, seconds] = await timed(() =>
    run(`vitest run --reporter=dot --reporter=json --outputFile.json="${resultsFile}"`),
  );
  const counts = await readFile(resultsFile, "utf8").then(JSON.parse, () => ({}));
  const { numPassedTests: passed = 0, numFailedTests: failed = 0, numTotalTests: total = 0 } = counts;
  if (passed + failed === 0 && result.code === 0) {
    result.code = 1;
    result.output += "\nNo test was executed.";
  }
  report("tests", result, seconds, `${passed} passed, ${failed} failed`);
  sum.passed += passed;
  // A file that could not be read, or an error outside every test, fails the run without failing a test.
  sum.failed += result.code !== 0 && failed === 0 ? 1 : failed;
  sum.skipped += total - passed - failed;
}

async function inTurn(steps) {
  const waiting = [...steps];
  const worker = async () => {
    for (let step = waiting.shift(); step !== undefined; step = waiting.shift()) await step();
  };
  await Promise.all(Array.from({ length: availableParallelism() }, worker));
}

process.on("SIGINT", () => process.exit(130));
process.on("SIGTERM", () => process.exit(143));

const checks = Object.entries(scripts)
  .filter(([name]) => name.startsWith("check:"))
  .map(([name, command]) => [name.slice("check:".length), command]);

// The longest first, so that the cores finish together.
const [first, ...others] = checks;
let built;
await inTurn([
  () => {
    built = runStep("build", scripts.build);
    return built;
  },
  () => runStep(...first),
  // Some tests start the programs that were built.
  () => built.then(runTests),
  ...others.map((check) => () => runStep(...check)),
]);
await rm(scratch, { recursive: true, force: true });

const skipped = sum.skipped > 0 ? `, ${sum.skipped} skipped` : "";
console.log(`\n${sum.passed} passed, ${sum.failed} failed${skipped}`);
process.exitCode = sum.failed === 0 ? 0 : 1;
