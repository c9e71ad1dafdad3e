// Runs the suite in a real VS Code.
//
//   npm run test:editor                   in a served editor, opened in Chromium (EDITOR_EDITION=oldest: the oldest supported)
//   npm run test:editor -- web            one of the runs below
//   npm run test:editor -- --prove-failing    only the launcher's check of itself: a test that fails ends with exit code 1
//   npm run test:desktop                  in a desktop VS Code, which is downloaded (EDITOR_VERSION chooses which)
//   VSCODE_EXE=PATH npm run test:desktop  in the one at that path
//
// EDITOR_ONLY=WORDS runs the tests whose title contains the words.
import { execFileSync } from "node:child_process";
import { statSync } from "node:fs";
import { cp, mkdir, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import {
  downloadAndUnzipVSCode,
  resolveCliArgsFromVSCodeExecutablePath,
  runTests,
} from "@vscode/test-electron";
import { installExtension } from "./served-editor.mjs";
import { buildSuite, root } from "./suite-build.mjs";

/**
 * The runs: which folders of suite/ are run, and in what.
 * @typedef {object} Run
 * @property {string} name
 * @property {string[]} tests
 * @property {boolean} [inBrowser] the extension and its server run in workers of a browser
 * @property {boolean} [restricted] the folder is not trusted; not on a desktop, where the library of the tests trusts all
 * @property {string} [language] of the editor; not on a desktop, where it would want a language pack
 * @property {boolean} [packaged] the extension is installed from the package
 * @property {number} [exitCode] the one that is right
 */

/** @type {Run[]} */
const runs = [
  { name: "workbench", tests: ["anywhere", "workbench"] },
  { name: "web", tests: ["anywhere"], inBrowser: true },
  { name: "restricted", tests: ["restricted"], restricted: true },
  { name: "german", tests: ["german"], language: "de" },
  { name: "packaged", tests: ["packaged"], packaged: true },
  { name: "failing", tests: ["failing"], exitCode: 1 },
];

const words = process.argv.slice(2);
const desktop = words.includes("--desktop");
const names = words.includes("--prove-failing")
  ? ["failing"]
  : words.filter((word) => !word.startsWith("--"));
const unknown = names.filter((name) => !runs.some((run) => run.name === name));
if (unknown.length > 0) {
  console.error(`There is no run ${unknown.join(", ")}: ${runs.map(({ name }) => name).join(", ")}.`);
  process.exit(1);
}

execFileSync(process.execPath, [path.join(root, "esbuild.mjs")], { stdio: "inherit" });
const verdicts = [];
for (const run of runs) {
  if (names.length > 0 && !names.includes(run.name)) continue;
  if (desktop && (run.restricted || run.language !== undefined)) continue;
  console.log(`\n${run.name}\n${"=".repeat(run.name.length)}`);
  const code = await carryOut(run);
  const right = run.exitCode ?? 0;
  verdicts.push({ isRight: code === right, text: `${run.name}: exit code ${code}, expected ${right}` });
}
console.log(
  `\n${verdicts.map(({ text, isRight }) => `${isRight ? "ok    " : "FAILED"} ${text}`).join("\n")}`,
);
if (!verdicts.every(({ isRight }) => isRight)) process.exitCode = 1;

/** @param {Run} run @returns {Promise<number>} the exit code of the editor */
async function carryOut({ name, tests, inBrowser = false, restricted = false, language, packaged = false }) {
  const extensionTestsPath = await buildSuite({ name, tests, inBrowser });
  const scratch = await mkdtemp(path.join(tmpdir(), "cotter-workspace-"));
  try {
    const workspace = path.join(scratch, "samples");
    await cp(path.join(root, "samples"), workspace, { recursive: true });
    const extensions = path.join(scratch, "extensions");
    await mkdir(extensions);
    if (packaged) await installPackage(extensions);
    return await runTests({
      ...editor(),
      extensionDevelopmentPath: packaged ? path.join(root, "test/editor/probe") : root,
      extensionTestsPath,
      extensionTestsEnv: {
        ...(restricted ? { EDITOR_RESTRICTED: "1" } : {}),
        ...(language === undefined ? {} : { EDITOR_LANGUAGE: language }),
      },
      launchArgs: [
        workspace,
        `--user-data-dir=${scratch}/data`,
        `--extensions-dir=${extensions}`,
        ...(inBrowser ? ["--extensionDevelopmentKind=web"] : []),
      ],
    });
  } catch (error) {
    if (typeof error?.code === "number") return error.code;
    console.error(error instanceof Error ? error.message : error);
    return 1;
  } finally {
    await rm(scratch, { recursive: true, force: true });
  }
}

/** Packages the extension and installs it, as a person would from the file. */
async function installPackage(extensionsFolder) {
  execFileSync("npm", ["run", "--silent", "package"], { cwd: root, stdio: ["ignore", "ignore", "inherit"] });
  const packageFile = path.join(root, "cotter.vsix");
  const { size } = statSync(packageFile);
  if (size >= 1024 * 1024) throw new Error(`cotter.vsix weighs ${size} bytes: more than a megabyte (2^20)`);
  if (!desktop) return await installExtension({ packageFile, extensionsFolder });
  const executable = process.env.VSCODE_EXE ?? (await downloadAndUnzipVSCode(editor()));
  const [program, ...args] = resolveCliArgsFromVSCodeExecutablePath(executable);
  const installing = [`--install-extension=${packageFile}`, `--extensions-dir=${extensionsFolder}`];
  execFileSync(program, [...args, ...installing], { stdio: "inherit" });
}

function editor() {
  const executable = desktop ? process.env.VSCODE_EXE : path.join(root, "test/editor/launch.mjs");
  return executable === undefined
    ? { version: process.env.EDITOR_VERSION ?? "stable" }
    : { vscodeExecutablePath: executable };
}
