// `npm run editor [FOLDER]`: a VS Code with the extension, served on this machine, for a person to try.
// Without a folder it opens a copy of the samples, which may be changed at will.
import { execFileSync, spawn } from "node:child_process";
import { cp, mkdir, rm, symlink } from "node:fs/promises";
import path from "node:path";
import { startServedEditor } from "./served-editor.mjs";
import { root } from "./suite-build.mjs";
import { workbenchAddress } from "./workbench.mjs";

const kept = path.join(root, ".cache/editor-person");
const folder = process.argv[2] === undefined ? await copyOfSamples() : path.resolve(process.argv[2]);

execFileSync(process.execPath, [path.join(root, "esbuild.mjs"), "--development"], { stdio: "inherit" });
const editor = await startServedEditor({
  folder: kept,
  edition: process.env.EDITOR_EDITION,
  extensionsFolder: await folderWithExtension(),
  driven: false,
});
const address = workbenchAddress(editor.origin, folder);
console.log(`\nVS Code ${editor.vscode} with Cotter, until Ctrl+C:\n\n  ${address}\n`);
openInBrowser(address);

process.on("SIGINT", () => process.exit(0));
process.on("SIGTERM", () => process.exit(0));
await editor.ended;

/** The extension as if it were installed, read from here: a window that is opened again has what was built meanwhile. */
async function folderWithExtension() {
  const extensions = path.join(kept, "extensions");
  await rm(extensions, { recursive: true, force: true });
  await mkdir(extensions, { recursive: true });
  await symlink(root, path.join(extensions, "cotter.cotter-0.1.0"), "junction");
  return extensions;
}

async function copyOfSamples() {
  const copy = path.join(kept, "samples");
  await rm(copy, { recursive: true, force: true });
  await cp(path.join(root, "samples"), copy, { recursive: true });
  return copy;
}

/** Asks the desktop for its browser. Where there is no desktop, the printed address has to do. */
function openInBrowser(url) {
  const hasDesktop = process.platform === "darwin" || process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
  if (!hasDesktop) return;
  const opener = process.platform === "darwin" ? "open" : "xdg-open";
  const child = spawn(opener, [url], { stdio: "ignore", detached: true });
  child.on("error", () => console.log(`There is no ${opener} here: open the address by hand.`));
  child.unref();
}
