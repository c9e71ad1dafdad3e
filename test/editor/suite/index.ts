import { readdirSync } from "node:fs";
import path from "node:path";
import { format } from "node:util";
import Mocha from "mocha";

/** The launcher prints the lines that begin so, and nothing else of the workbench's log. */
const mark = "suite | ";

/** Called by VS Code in the extension host. Rejects when a test failed, which becomes exit code 1. */
export async function run(): Promise<void> {
  await runSuite().catch((error: Error) => {
    console.log(mark + error.stack);
    throw error;
  });
}

async function runSuite(): Promise<void> {
  Mocha.reporters.Base.consoleLog = (...line) => console.log(`${mark}${format(...line)}`);
  const mocha = new Mocha({ ui: "tdd", timeout: 20_000, color: false });
  for (const file of readdirSync(__dirname)) {
    if (file.endsWith(".test.cjs")) mocha.addFile(path.join(__dirname, file));
  }
  const { failures, executed } = await new Promise<{ failures: number; executed: number }>((resolve) => {
    const runner = mocha.run((failures) => resolve({ failures, executed: runner.stats?.tests ?? 0 }));
  });
  if (executed === 0) throw new Error("No test was executed.");
  if (failures > 0) throw new Error(`${failures} of ${executed} tests failed.`);
}
