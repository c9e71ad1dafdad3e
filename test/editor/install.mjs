// Installs a VS Code that is served to a browser, for the tests in the real editor, into .cache/editor/ (once).
// Everything comes from the package registry; nothing is compiled.
//
//   node test/editor/install.mjs            the newest
//   node test/editor/install.mjs oldest     the oldest that the extension supports
import { execFile } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";

const run = promisify(execFile);
const root = path.dirname(path.dirname(path.dirname(fileURLToPath(import.meta.url))));
const cache = path.join(root, ".cache/editor");

/** Each edition: the package that holds the editor, and the Node that it wants (undefined: the one that runs this). */
const editions = {
  newest: { package: "code-server@4.139.1", vscode: "1.139.1", node: "24.21.0" },
  oldest: { package: "code-server@4.100.3", vscode: "1.100.3", node: undefined },
};

/** Dependencies of the editor that are large and that no test needs. */
const unneeded = ["@devcontainers/cli", "@github/copilot-sdk", "@microsoft/mxc-sdk"];

/**
 * Installs an edition if it is not there yet.
 * @param {keyof typeof editions} [name]
 * @returns {Promise<{vscode: string, node: string, server: string}>} its version, the Node to start it with, and
 *   the file to start
 */
export async function installEditor(name = "newest") {
  const edition = editions[name];
  if (edition === undefined) throw new Error(`No edition ${name}: ${Object.keys(editions).join(", ")}.`);
  const folder = path.join(cache, edition.vscode);
  if (!existsSync(folder)) {
    await mkdir(cache, { recursive: true });
    const unfinished = await mkdtemp(path.join(cache, "unfinished-"));
    try {
      await unpackEditor(edition.package, unfinished);
      await installDependencies(path.join(unfinished, "package/lib/vscode"));
      if (edition.node !== undefined) await installNode(edition.node, unfinished);
      await rename(unfinished, folder);
    } finally {
      await rm(unfinished, { recursive: true, force: true });
    }
  }
  return {
    vscode: edition.vscode,
    node:
      edition.node === undefined
        ? process.execPath
        : path.join(folder, "node_modules", nodePackage(), nodeBinary()),
    server: path.join(folder, "package/lib/vscode/out/server-main.js"),
  };
}

/** axe-core, which judges the accessibility of pages. @returns {Promise<string>} the script to run in a page */
export async function installAxe() {
  const folder = path.join(cache, "axe-4.14.1");
  const script = path.join(folder, "node_modules/axe-core/axe.min.js");
  if (!existsSync(script)) {
    await mkdir(folder, { recursive: true });
    await npm(folder, "install", "--prefix", folder, "--ignore-scripts", "axe-core@4.14.1");
  }
  return script;
}

async function unpackEditor(packageName, folder) {
  await npm(folder, "pack", packageName);
  const [archive] = (await readdir(folder)).filter((file) => file.endsWith(".tgz"));
  const wanted = ["package/lib/vscode", "package/package.json"];
  await run("tar", ["--extract", "--file", archive, "--exclude=*.map", ...wanted], { cwd: folder });
  await rm(path.join(folder, archive));
}

async function installDependencies(folder) {
  const manifestFile = path.join(folder, "package.json");
  const manifest = JSON.parse(await readFile(manifestFile, "utf8"));
  for (const name of unneeded) delete manifest.dependencies[name];
  await writeFile(manifestFile, JSON.stringify(manifest, null, 2));
  // The published lock file is out of step with the manifest.
  await rm(path.join(folder, "npm-shrinkwrap.json"), { force: true });
  await npm(folder, "install", "--omit=dev", "--ignore-scripts");
}

async function installNode(version, folder) {
  await npm(folder, "install", "--prefix", folder, "--ignore-scripts", `${nodePackage()}@${version}`);
}

function nodePackage() {
  return `node-${process.platform === "win32" ? "win" : process.platform}-${process.arch}`;
}

function nodeBinary() {
  return process.platform === "win32" ? "bin/node.exe" : "bin/node";
}

async function npm(folder, ...args) {
  // npm hands its own settings to what it starts, such as the folder of this project: they are not meant here.
  const environment = Object.entries(process.env).filter(([name]) => !/^npm_(?!config_registry)/i.test(name));
  const options = { cwd: folder, env: Object.fromEntries(environment), maxBuffer: 1 << 26 };
  await run("npm", [...args, "--silent", "--no-audit", "--no-fund", "--no-package-lock"], options);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { vscode, server } = await installEditor(process.argv[2]);
  console.log(`VS Code ${vscode} is in ${path.relative(process.cwd(), server)}`);
}
