// Starts an installed VS Code as a server on this machine's own address, reachable from nowhere else.
import { execFile, spawn } from "node:child_process";
import { createWriteStream } from "node:fs";
import { mkdir, readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { promisify } from "node:util";
import { installEditor } from "./install.mjs";

/** What a person would have to switch off before every test. */
const quietSettings = {
  "workbench.startupEditor": "none",
  "workbench.welcomePage.walkthroughs.openOnInstall": false,
  "workbench.tips.enabled": false,
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "workbench.enableExperiments": false,
  "update.mode": "none",
  "extensions.autoUpdate": false,
  "extensions.autoCheckUpdates": false,
  "extensions.ignoreRecommendations": true,
  "telemetry.telemetryLevel": "off",
  "chat.disableAIFeatures": true,
  "chat.commandCenter.enabled": false,
  "git.openRepositoryInParentFolders": "never",
  "editor.accessibilitySupport": "off",
  "files.simpleDialog.enable": true,
};

/**
 * @typedef {object} ServedEditor
 * @property {string} origin the address, for example http://127.0.0.1:4000
 * @property {string} vscode the version of the editor
 * @property {Promise<void>} ended settled when the server has ended
 * @property {() => Promise<void>} stop ends the server and all that it started
 */

/**
 * @param {object} options
 * @param {string} options.folder where the editor may keep its data; the log is written to server.log in it
 * @param {string} [options.edition] see install.mjs
 * @param {boolean} [options.trust] whether every folder is trusted; false starts in Restricted Mode
 * @param {Record<string, unknown>} [options.settings] on top of the quiet ones
 * @param {string} [options.extensionsFolder] where installed extensions are
 * @param {boolean} [options.driven] false for a person: an editor that is driven by a test shows no notification by
 *   itself, and one that is not silently ignores extensions under development
 * @returns {Promise<ServedEditor>}
 */
export async function startServedEditor({
  folder,
  edition,
  trust = true,
  settings = {},
  extensionsFolder,
  driven = true,
}) {
  const { vscode, node, server } = await installEditor(edition);
  const data = path.join(folder, "data");
  const temporary = path.join(folder, "tmp");
  await mkdir(path.join(data, "User"), { recursive: true });
  await mkdir(temporary, { recursive: true });
  const allSettings = { ...quietSettings, "security.workspace.trust.enabled": !trust, ...settings };
  await writeFile(path.join(data, "User/settings.json"), JSON.stringify(allSettings, null, 2));

  const child = spawn(
    node,
    [
      server,
      "--host=127.0.0.1",
      "--port=0",
      "--without-connection-token",
      "--accept-server-license-terms",
      ...(driven ? ["--enable-smoke-test-driver"] : []),
      `--server-data-dir=${data}`,
      `--user-data-dir=${data}`,
      `--extensions-dir=${extensionsFolder ?? path.join(folder, "extensions")}`,
      "--telemetry-level=off",
      ...(trust ? ["--disable-workspace-trust"] : []),
    ],
    {
      detached: true,
      stdio: ["ignore", "pipe", "pipe"],
      env: { ...process.env, EXTENSIONS_GALLERY: "{}", TMPDIR: temporary },
    },
  );
  const logFile = path.join(folder, "server.log");
  const log = createWriteStream(logFile);
  child.stdout.pipe(log, { end: false });
  child.stderr.pipe(log, { end: false });

  const endGroup = () => {
    try {
      process.kill(-child.pid, "SIGKILL");
    } catch {
      // It has ended by itself.
    }
  };
  process.once("exit", endGroup);
  const ended = new Promise((resolve) => child.once("close", () => resolve()));

  const port = await listeningPort(child, ended, logFile);
  return {
    origin: `http://127.0.0.1:${port}`,
    vscode,
    ended,
    async stop() {
      process.removeListener("exit", endGroup);
      endGroup();
      await ended;
      log.end();
    },
  };
}

/**
 * Installs a packaged extension, as a person would from the file.
 * @param {object} options
 * @param {string} options.packageFile the .vsix
 * @param {string} options.extensionsFolder where installed extensions are
 * @param {string} [options.edition] see install.mjs
 */
export async function installExtension({ packageFile, extensionsFolder, edition }) {
  const { node, server } = await installEditor(edition);
  await promisify(execFile)(
    node,
    [
      server,
      `--install-extension=${packageFile}`,
      `--extensions-dir=${extensionsFolder}`,
      `--server-data-dir=${path.join(extensionsFolder, ".data")}`,
      "--accept-server-license-terms",
      "--telemetry-level=off",
    ],
    { env: { ...process.env, EXTENSIONS_GALLERY: "{}" } },
  );
}

/** The port that the server says it listens on. */
async function listeningPort(child, ended, logFile) {
  const said = new Promise((resolve) => {
    let output = "";
    child.stdout.on("data", (chunk) => {
      output += chunk;
      const port = /Extension host agent listening on (\d+)/.exec(output)?.[1];
      if (port !== undefined) resolve(port);
    });
  });
  const port = await Promise.race([said, ended]);
  if (port === undefined) {
    throw new Error(`The editor's server ended before it listened:\n${await readFile(logFile, "utf8")}`);
  }
  return port;
}
