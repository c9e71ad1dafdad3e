// Sizes of what is shipped (KB). What a server has loaded is what it says itself once it has told the first diagnostics.
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { LanguageClient } from "./language-client.mjs";
import { LogFolder } from "./subjects.mjs";

const PRELOADED = fileURLToPath(new URL("loaded-parts.mjs", import.meta.url));

export async function measureSizes({ dist, packageFile, generateLog, sample }) {
  const [server, client] = ["server.cjs", "client.cjs"].map((name) => path.join(dist, name));
  const generated = new LogFolder(generateLog({ lines: 1000, broken: 0.05 }));
  const [first] = generated.files;
  const ofGenerated = await loadedBy(server, generated.uri, generated.uriOf(first), first.text);
  generated.remove();
  const vehicle = path.join(sample, "vehicle.cotter");
  const [uri, file] = [sample, vehicle].map((name) => pathToFileURL(name).href);
  const ofSample = await loadedBy(server, uri, file, readFileSync(vehicle, "utf8"));
  return [
    { name: "the server after the first diagnostics of a generated log", size: sum(ofGenerated) },
    { name: "the same of the sample that has every word of the notation", size: sum(ofSample) },
    { name: "the server with all that it can load", size: sum(reachable(server)) },
    { name: "the client in the editor, with what it loads late", size: sum(reachable(client)) },
    { name: "the server for an editor in a browser", size: kilobytes(path.join(dist, "browser/server.js")) },
    { name: "the package, cotter.vsix", size: existsSync(packageFile) ? kilobytes(packageFile) : undefined },
  ];
}

const kilobytes = (file) => statSync(file).size / 1024;
const sum = (files) => [...files].reduce((all, file) => all + kilobytes(file), 0);

/** The files that a server has loaded when it has told the diagnostics of a folder, one file of it open. */
async function loadedBy(server, folder, uri, text) {
  const scratch = mkdtempSync(path.join(tmpdir(), "cotter-loaded-"));
  const list = path.join(scratch, "parts.txt");
  const client = new LanguageClient(
    ["--import", PRELOADED, server, "--stdio"],
    {},
    { COTTER_LOADED_PARTS: list },
  );
  const capabilities = { textDocument: { diagnostic: {}, publishDiagnostics: {} } };
  await client.start(folder, { capabilities });
  client.tell("textDocument/didOpen", { textDocument: { uri, languageId: "cotter", version: 1, text } });
  const { items } = await client.ask("workspace/diagnostic", { previousResultIds: [] });
  if (!items.some((of) => of.items.length > 0))
    throw new Error(`${folder} has no complaints: asked for too early?`);
  await client.stop();
  const files = readFileSync(list, "utf8").split("\n");
  rmSync(scratch, { recursive: true });
  if (!files.includes(server)) throw new Error(`${server} does not say what it has loaded`);
  return files;
}

/** A file and all that it requires, at once or late. */
function reachable(file, known = new Set()) {
  if (known.has(file)) return known;
  known.add(file);
  for (const { 1: part } of readFileSync(file, "utf8").matchAll(/\brequire\(\s*["'](\.[^"']+)["']\s*\)/g))
    reachable(path.join(path.dirname(file), part), known);
  return known;
}
