/** Runs tests with mocha in an extension host, that of Node or that of a browser. */
import Mocha from "mocha";

/** The launcher prints the lines that begin so, and nothing else of the workbench's log. */
const MARK = "suite | ";

export interface RunOptions {
  /** Loads the files that define the tests. */
  readonly load: () => Promise<unknown>;
  /** Only tests whose full title contains this. */
  readonly only: string;
}

/** Rejects when a test failed, which becomes exit code 1. */
export async function runTests(options: RunOptions): Promise<void> {
  await runLoaded(options).catch((error: Error) => {
    say(error.stack ?? error.message);
    throw error;
  });
}

async function runLoaded({ load, only }: RunOptions): Promise<void> {
  Mocha.reporters.Base.consoleLog = (pattern: unknown = "", ...values) =>
    say(filled(String(pattern), values));
  const mocha = new Mocha({ ui: "tdd", reporter: "spec", timeout: 30_000, color: false });
  if (only !== "") mocha.fgrep(only);
  mocha.suite.emit("pre-require", globalThis as Mocha.MochaGlobals, "", mocha);
  await load();
  const { failures, executed } = await new Promise<{ failures: number; executed: number }>((resolve) => {
    const runner = mocha.run((count) => resolve({ failures: count, executed: runner.stats?.tests ?? 0 }));
  });
  if (executed === 0) throw new Error("No test was executed.");
  if (failures > 0) throw new Error(`${failures} of ${executed} tests failed.`);
}

/** A line at a time: the editor's log makes an entry of each. */
function say(text: string): void {
  for (const line of text.split("\n")) console.log(MARK + line);
}

/** The pattern of a reporter with its values: `%s` and `%d`. */
function filled(pattern: string, values: readonly unknown[]): string {
  const left = [...values];
  const text = pattern.replace(/%[sd%]/g, (directive) =>
    directive === "%%" ? "%" : String(left.shift() ?? ""),
  );
  return [text, ...left.map(String)].join(" ");
}
