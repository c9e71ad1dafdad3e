/** The libraries of the protocol, turned from CommonJS into ES modules, are what they were. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { afterAll, expect, it } from "vitest";

const { asEsModule, librariesAsEsModules, NOT_ASKED_FOR, withoutFeature } = (await import(
  "../../bundling/es-modules.mjs" as string
)) as {
  asEsModule: (text: string, file: string) => string;
  NOT_ASKED_FOR: readonly string[];
  withoutFeature: (text: string, file: string) => string;
  librariesAsEsModules: import("esbuild").Plugin;
};
const root = fileURLToPath(new URL("../../", import.meta.url));
const require = createRequire(path.join(root, "package.json"));
const scratch = mkdtempSync(path.join(tmpdir(), "cotter-libraries-"));
afterAll(() => rmSync(scratch, { recursive: true }));

/** What a package offers once it has been bundled by way of the plugin, with everything kept. */
async function bundled(name: string): Promise<Record<string, unknown>> {
  const outfile = path.join(scratch, `${name.replaceAll("/", "-")}.mjs`);
  await build({
    stdin: { contents: `export * from ${JSON.stringify(name)};`, resolveDir: root },
    bundle: true,
    keepNames: true,
    format: "esm",
    platform: "node",
    mainFields: ["module", "main"],
    banner: {
      js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);',
    },
    logLevel: "error",
    logOverride: { "import-is-undefined": "error" },
    plugins: [librariesAsEsModules],
    outfile,
  });
  return import(pathToFileURL(outfile).href) as Promise<Record<string, unknown>>;
}

/** Names, kinds and inner names: what of a package can be seen without calling it. */
function shapeOf(value: unknown, depth = 0): unknown {
  if (typeof value !== "object" && typeof value !== "function") return value;
  if (value === null || depth > 2) return typeof value;
  const names = Object.getOwnPropertyNames(value).filter(
    (name) => !["prototype", "arguments", "caller"].includes(name),
  );
  const inner = names.map((name) => [name, shapeOf((value as Record<string, unknown>)[name], depth + 1)]);
  return [typeof value, Object.fromEntries(inner)];
}

/** Offered by two modules that a third one passes on: of such an ES module offers neither, and CommonJS the first. */
const OF_TWO = ["createMessageConnection", "createProtocolConnection"];

it.each(["vscode-jsonrpc/node", "vscode-languageserver-protocol/node", "vscode-languageserver/node"])(
  "%s offers the same",
  async (name) => {
    const original = require(name) as Record<string, unknown>;
    const turned = await bundled(name);
    const names = Object.keys(original).filter((one) => one in turned || !OF_TWO.includes(one));
    expect(Object.keys(turned).sort()).toEqual(names.sort());
    for (const one of names) expect([one, shapeOf(turned[one])]).toEqual([one, shapeOf(original[one])]);
  },
);

it.each([
  'if (true) exports.late = require("late");',
  "module.exports = { a: 1 };",
  'Object.assign(exports, require("other"));',
])("refuses what it does not know: %s", (text) => {
  expect(() => asEsModule(text, "a.js")).toThrow("a.js cannot be turned into an ES module");
});

it("has no feature left out that the server asks for", () => {
  const server = path.join(root, "server/language-server");
  const sources = readdirSync(server, { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(".ts"))
    .map((file) => readFileSync(path.join(server, file), "utf8"));
  // `connection.notebooks.synchronization`, `connection.workspace.textDocumentContent`, `connection.languages.moniker`.
  const asked = (name: string) => sources.some((text) => new RegExp(`\\.${name}s?\\.`).test(text));
  expect(["diagnostic", "inlayHint"].filter((name) => !asked(name))).toEqual([]);
  expect(NOT_ASKED_FOR.filter(asked)).toEqual([]);
});

it("refuses a feature that is written otherwise", () => {
  expect(withoutFeature("const AFeature = (Base) => {\n  a;\n};\nb;", "a.js")).toBe(
    "const AFeature = (Base) => Base;\nb;",
  );
  expect(() => withoutFeature("function AFeature(Base) {}", "a.js")).toThrow("a.js has not one feature");
});
