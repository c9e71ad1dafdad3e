/** The programs as bundles, built once for all that one thread tests: a session is then a plain process of Node. */
import { mkdtemp } from "node:fs/promises";
import path from "node:path";
import { build } from "esbuild";
import { inject } from "vitest";

const ENTRIES = { server: "server/language-server/main.ts", cotter: "server/command-line/main.ts" };

/** Some packages ask for parts of Node as CommonJS does. */
const REQUIRE =
  'import { createRequire as __createRequire } from "node:module"; const require = __createRequire(import.meta.url);';

export type Program = keyof typeof ENTRIES;

let building: Promise<string> | undefined;

/** The file of a bundled program. */
export async function bundleOf(program: Program): Promise<string> {
  building ??= bundle();
  return path.join(await building, `${program}.mjs`);
}

async function bundle(): Promise<string> {
  const folder = await mkdtemp(path.join(inject("bundleFolder"), "of-thread-"));
  await build({
    entryPoints: ENTRIES,
    outdir: folder,
    outExtension: { ".js": ".mjs" },
    bundle: true,
    // What is loaded late is a file of its own, as in what is shipped: most of a test's time is the start of Node.
    splitting: true,
    format: "esm",
    minify: true,
    // A stack trace is read by the names of the functions.
    keepNames: true,
    platform: "node",
    target: "node20",
    banner: { js: REQUIRE },
    logLevel: "error",
  });
  return folder;
}
