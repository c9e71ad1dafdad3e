// Bundles the suite for the extension host, which loads CommonJS.
import path from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

export const root = path.dirname(path.dirname(path.dirname(fileURLToPath(import.meta.url))));

/** @returns {Promise<string>} the file that the extension host is to load */
export async function buildSuite() {
  const outdir = path.join(root, ".cache/editor-suite");
  await build({
    absWorkingDir: root,
    entryPoints: ["test/editor/suite/index.ts", "test/editor/suite/*.test.ts"],
    outdir,
    outExtension: { ".js": ".cjs" },
    bundle: true,
    platform: "node",
    format: "cjs",
    target: "node20",
    // mocha stays outside, so that the index and the tests have the same one.
    external: ["vscode", "mocha"],
    sourcemap: "inline",
    logLevel: "warning",
  });
  return path.join(outdir, "index.cjs");
}
