#!/usr/bin/env node
// Stands in for the VS Code executable: takes the arguments that VS Code takes for a test run, runs the suite in a
// served editor opened in Chromium, prints what the suite prints, and exits with the suite's exit code.
//
//   launch.mjs --extensionDevelopmentPath=PATH [--extensionDevelopmentKind=web] --extensionTestsPath=PATH
//     [--disable-workspace-trust] [--extensions-dir=PATH] FOLDER
//
// Exit codes: the suite's own (0 passed, 1 failed), 1 when the editor or the page ended early, 124 when the suite
// did not finish in time. EDITOR_EDITION (see install.mjs) and EDITOR_SECONDS choose the editor and the time, and
// EDITOR_RESTRICTED has folders open in Restricted Mode; EDITOR_LANGUAGE is the language that the editor is said to be in.
// What the editor said, and a picture of it when the suite failed, stay in .cache/editor-logs/.
import { copyFile, mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { startDriver } from "./driver.mjs";
import { startServedEditor } from "./served-editor.mjs";
import { developInBrowser, serveFolder } from "./served-extension.mjs";
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
const inBrowser = options.get("extensionDevelopmentKind") === "web";
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
  const { browser, page } = await openBrowser({
    // The page of a served editor loads extensions from its own server alone.
    bypassCSP: inBrowser,
  });
  if (process.env.EDITOR_LANGUAGE !== undefined) await speak(page, process.env.EDITOR_LANGUAGE);
  const driver = await startDriver(page);
  // The extension host inherits it, and the suite speaks to it (suite/driver.ts).
  process.env.EDITOR_DRIVER = driver.address;
  const editor = await startServedEditor({
    folder: scratch,
    edition: process.env.EDITOR_EDITION,
    // The library that starts this adds the option at every time.
    trust: options.has("disable-workspace-trust") && process.env.EDITOR_RESTRICTED === undefined,
    extensionsFolder: options.get("extensions-dir"),
  });
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
    driver.stop();
    await browser.close();
    await editor.stop();
  }
}

/**
 * Has the editor take itself for one in another language, as with a language pack: its own words stay English, and those
 * of extensions are in that language.
 */
async function speak(page, language) {
  await page.addInitScript((name) => {
    Object.defineProperty(globalThis, "_VSCODE_NLS_LANGUAGE", { get: () => name, set: () => undefined });
  }, language);
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
  page.on("console", (message) => workbenchLog.push(`[page ${message.type()}] ${message.text()}`));
  const folder = path.resolve(folders[0] ?? ".");
  const developmentPath = options.get("extensionDevelopmentPath");
  const testsPath = options.get("extensionTestsPath");
  if (!inBrowser) {
    await page.goto(workbenchAddress(editor.origin, folder, { developmentPath, testsPath }));
    return { code: await exit };
  }
  const served = await serveFolder(developmentPath);
  try {
    const below = `/${path.relative(developmentPath, testsPath)}`;
    await developInBrowser(page, { authority: served.authority, testsPath: below });
    await page.goto(workbenchAddress(editor.origin, folder));
    return { code: await exit };
  } finally {
    await served.stop();
  }
}

/** The first lines of the errors in the workbench's log, without those of every run: parts that were not compiled. */
function workbenchErrors() {
  return workbenchLog
    .filter((entry) => entry.startsWith("[error]") && !/bindings file|watchdog|Service Worker/.test(entry))
    .map((entry) => entry.split("\n")[0]);
}
