/** The programs as bundles, built once for all sessions: a session is then a plain process of Node. */
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { build } from "esbuild";

const ENTRIES = { server: "server/language-server/main.ts", cotter: "server/command-line/main.ts" };

export type Program = keyof typeof ENTRIES;

let building: Promise<string> | undefined;

/** The file of a bundled program. */
export async function bundleOf(program: Program): Promise<string> {
  building ??= bundle();
  return path.join(await building, `${program}.cjs`);
}

/** Removes the bundles. */
export async function removeBundles(): Promise<void> {
  if (building !== undefined) await rm(await building, { recursive: true });
  building = undefined;
}

async function bundle(): Promise<string> {
  const folder = await mkdtemp(path.join(tmpdir(), "cotter-session-"));
  await build({
    entryPoints: ENTRIES,
    outdir: folder,
    outExtension: { ".js": ".cjs" },
    bundle: true,
    format: "cjs",
    platform: "node",
    target: "node20",
    sourcemap: "inline",
    logLevel: "error",
  });
  return folder;
}
