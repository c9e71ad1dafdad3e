#!/usr/bin/env node
// Stands in for the VS Code executable: takes the arguments that VS Code takes for a test run, runs the suite in a
// served editor opened in Chromium, prints what the suite prints, and exits with the suite's exit code.
//
//   launch.mjs --extensionDevelopmentPath=PATH --extensionTestsPath=PATH [--disable-workspace-trust] FOLDER
//
// Exit codes: the suite's own (0 passed, 1 failed), 1 when the editor or the page ended early, 124 when the suite
// did not finish in time. EDITOR_EDITION (see install.mjs) and EDITOR_SECONDS choose the editor and the time.
// What the editor said, and a picture of it when the suite failed, stay in .cache/editor-logs/.
import { copyFile, mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { startServedEditor } from "./served-editor.mjs";
import { root } from "./suite-build.mjs";
import { openBrowser, workbenchAddress } from "./workbench.mjs";

/** How the suite marks its own lines in the workbench's log (suite/index.ts). */
const mark = "suite | ";

const options = new Map();
const folders = [];
for (const argument of process.argv.slice(2)) {
  const [, name, value] = /^--([^=]+)(?:=(.*))?$/.exec(argument) ?? [];
  if (name === undefined) folders.push(argument);
  else options.set(name, value ?? "");
}
const seconds = Number(process.env.EDITOR_SECONDS ?? 120);

process.on("SIGINT", () => process.exit(130));
process.on("SIGTERM", () => process.exit(143));

const logs = path.join(root, ".cache/editor-logs");
const scratch = await mkdtemp(path.join(tmpdir(), "cotter-editor-"));
const workbenchLog = [];
let suiteSpoke = false;
try {
  const { code, words } = await runInEditor();
  if (words !== undefined) console.error(words);
  if (code !== 0 && !suiteSpoke) console.error(workbenchErrors().join("\n"));
  if (code !== 0) console.error(`What the editor said is in ${path.relative(process.cwd(), logs)}.`);
  process.exitCode = code;
} catch (error) {
  console.error(error);
  process.exitCode = 1;
} finally {
  await mkdir(logs, { recursive: true });
  await writeFile(path.join(logs, "workbench.log"), workbenchLog.join("\n"));
  await copyFile(path.join(scratch, "server.log"), path.join(logs, "server.log")).catch(() => undefined);
  await rm(scratch, { recursive: true, force: true });
}

async function runInEditor() {
  const editor = await startServedEditor({
    folder: scratch,
    edition: process.env.EDITOR_EDITION,
    trust: options.has("disable-workspace-trust"),
    extensionsFolder: options.get("extensions-dir"),
  });
  const { browser, page } = await openBrowser();
  try {
    const outcome = await Promise.race([
      runSuite(editor, page),
      editor.ended.then(() => ({ code: 1, words: "The editor's server ended before the suite did." })),
      new Promise((resolve) => {
        page.once("crash", () => resolve({ code: 1, words: "The page of the editor crashed." }));
      }),
      sleep(seconds * 1000, undefined, { ref: false }).then(() => ({
        code: 124,
        words: `The suite did not finish within ${seconds} seconds: ended.`,
      })),
    ]);
    if (outcome.code !== 0)
      await page.screenshot({ path: path.join(logs, "failure.png") }).catch(() => undefined);
    return outcome;
  } finally {
    await browser.close();
    await editor.stop();
  }
}

/** Opens the workbench with the suite, and waits for the exit code that it reports. */
async function runSuite(editor, page) {
  const exit = new Promise((resolve) => page.exposeFunction("codeAutomationExit", resolve));
  await page.exposeFunction("codeAutomationLog", (type, args) => {
    const text = args.join(" ");
    if (text.startsWith(mark)) {
      suiteSpoke = true;
      console.log(text.slice(mark.length));
    } else workbenchLog.push(`[${type}] ${text}`);
  });
  const address = workbenchAddress(editor.origin, path.resolve(folders[0] ?? "."), {
    developmentPath: options.get("extensionDevelopmentPath"),
    testsPath: options.get("extensionTestsPath"),
  });
  await page.goto(address);
  return { code: await exit };
}

/** The first lines of the errors in the workbench's log, without those of every run: parts that were not compiled. */
function workbenchErrors() {
  return workbenchLog
    .filter((entry) => entry.startsWith("[error]") && !/bindings file|watchdog|Service Worker/.test(entry))
    .map((entry) => entry.split("\n")[0]);
}
