// Bundles the tests of a run for the extension host, which loads CommonJS.
import { readdir } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

export const root = path.dirname(path.dirname(path.dirname(fileURLToPath(import.meta.url))));
const suite = path.join(root, "test/editor/suite");

/**
 * @param {object} run
 * @param {string} run.name
 * @param {string[]} run.tests folders of suite/ whose tests are run
 * @param {boolean} [run.inBrowser] whether the extension host is a worker of a browser
 * @returns {Promise<string>} the file that the extension host is to load
 */
export async function buildSuite({ name, tests, inBrowser = false }) {
  const outfile = path.join(root, ".cache/editor-suite", name, "index.js");
  const loading = (await Promise.all(tests.map(testFilesIn))).flat().map((file) => `import("./${file}")`);
  await build({
    absWorkingDir: root,
    stdin: {
      resolveDir: suite,
      contents: `
        import { runTests } from "./running/run.ts";
        const load = async () => { ${loading.map((one) => `await ${one};`).join(" ")} };
        export const run = () => runTests({ load, only: ${JSON.stringify(process.env.EDITOR_ONLY ?? "")} });
      `,
    },
    outfile,
    bundle: true,
    format: "cjs",
    external: ["vscode"],
    sourcemap: "inline",
    logLevel: "warning",
    ...(inBrowser ? forBrowser() : { platform: "node", target: "node20", packages: "external" }),
  });
  return outfile;
}

function forBrowser() {
  return {
    platform: "browser",
    target: "es2022",
    alias: {
      mocha: path.join(suite, "running/browser-mocha.ts"),
      "node:assert/strict": path.join(suite, "running/browser-assert.ts"),
    },
  };
}

/** In the order of their names, relative to suite/. */
async function testFilesIn(folder) {
  const files = await readdir(path.join(suite, folder));
  return files
    .filter((file) => file.endsWith(".test.ts"))
    .sort()
    .map((file) => `${folder}/${file}`);
}
