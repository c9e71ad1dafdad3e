// Runs the suite in a real VS Code.
//
//   npm run test:editor              in a served editor, opened in Chromium (EDITOR_EDITION=oldest: the oldest supported)
//   npm run test:desktop             in a desktop VS Code, which is downloaded (EDITOR_VERSION chooses which)
//   VSCODE_EXE=PATH npm run test:desktop     in the one at that path
import { execFileSync } from "node:child_process";
import { cp, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { runTests } from "@vscode/test-electron";
import { buildSuite, root } from "./suite-build.mjs";

const desktop = process.argv.includes("--desktop");
const executable = desktop ? process.env.VSCODE_EXE : path.join(root, "test/editor/launch.mjs");

execFileSync(process.execPath, [path.join(root, "esbuild.mjs")], { stdio: "inherit" });
const extensionTestsPath = await buildSuite();
const scratch = await mkdtemp(path.join(tmpdir(), "cotter-workspace-"));
try {
  const workspace = path.join(scratch, "samples");
  await cp(path.join(root, "samples"), workspace, { recursive: true });
  await runTests({
    ...(executable === undefined
      ? { version: process.env.EDITOR_VERSION ?? "stable" }
      : { vscodeExecutablePath: executable }),
    extensionDevelopmentPath: root,
    extensionTestsPath,
    launchArgs: [workspace, `--user-data-dir=${scratch}/data`, `--extensions-dir=${scratch}/extensions`],
  });
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = typeof error?.code === "number" ? error.code : 1;
} finally {
  await rm(scratch, { recursive: true, force: true });
}
