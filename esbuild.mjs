// Builds what is shipped into dist/: the programs that Node starts, with the parts that they share or load late, and in
// dist/browser/ the extension and its server for an editor in a browser, each one file.
//
//   node esbuild.mjs                  minified, without source maps
//   node esbuild.mjs --package        smaller still, and slower to make
//   node esbuild.mjs --development    readable, with source maps: for the debugger
//   node esbuild.mjs --watch          the same again after each change
//
// Reading a megabyte of script costs Node some 60 ms, so a program reads only what it needs: code that is needed
// late is written as `await import("./late.ts")` where it is needed, and becomes a file of its own. esbuild
// divides a program so only into ES modules, while an extension host wants CommonJS and starts it sooner.
// Therefore two steps: bundle and divide as ES modules, then turn each file into CommonJS. In the end the parts that a
// short command loads get their compiled code beside them (compiled-code.mjs).
import { execFile } from "node:child_process";
import { existsSync } from "node:fs";
import { chmod, mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { build, context } from "esbuild";
import { minify } from "terser";
import { commonJs, readableCommonJs } from "./bundling/common-js.mjs";
import { leanDecimals } from "./bundling/decimals.mjs";
import { librariesAsEsModules } from "./bundling/es-modules.mjs";
import { lateParts, requireNow } from "./bundling/late-parts.mjs";
import { withoutTexts } from "./bundling/late-texts.mjs";
import { leanParserLibrary } from "./bundling/parser-library.mjs";

const root = path.dirname(fileURLToPath(import.meta.url));
const output = path.join(root, "dist");
const notices = path.join(output, "THIRD-PARTY-NOTICES.txt");
const packageList = path.join(output, "packaged.txt");
const packagedReadme = path.join(output, "readme.md");
const watching = process.argv.includes("--watch");
const packaging = process.argv.includes("--package");
const development = watching || process.argv.includes("--development");

/** The programs: the name of the file in dist/, and the module that it starts with. */
const programs = {
  client: "client/extension.ts",
  server: "server/language-server/main.ts",
  cotter: "server/command-line/main.ts",
};
const { client, ...serverPrograms } = programs;

/**
 * The programs of a browser. Its extension host loads CommonJS from files that end with `.js`, and refuses those of a
 * manifest that declares `"type": "module"`.
 */
const browserPrograms = [
  { name: "client", entry: "client/browser.ts", format: "cjs" },
  { name: "server", entry: "server/language-server/browser-main.ts", format: "iife" },
];

/** What each bundling has written, by its name. */
const written = new Map();

/** Writes what one bundling made, and once all have, the licences of everything that went in. */
function writing(name, write) {
  return {
    name,
    setup(bundling) {
      bundling.onEnd(async ({ errors, outputFiles, metafile }) => {
        if (errors.length > 0) return;
        await Promise.all(outputFiles.map(write));
        written.set(name, { paths: outputFiles.map((file) => file.path), metafile });
        if (written.size < bundlings.length) return;
        const all = [...written.values()];
        await writeNotices(all.flatMap(({ metafile }) => Object.keys(metafile.inputs)));
        const outputs = Object.assign({}, ...all.map(({ metafile }) => metafile.outputs));
        await writePackageList(outputs);
        await writePackagedReadme();
        const kept = [...all.flatMap(({ paths }) => paths), notices, packageList, packagedReadme];
        await removeOthers(new Set(kept));
        if (!development) await compile();
        reportSizes(outputs);
      });
    },
  };
}

async function writeAsItIs({ path: file, text }) {
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(file, await tightened(editorInPlace(text)));
}

/**
 * Each module that has the editor as a whole gets a copy of it, all of its hundreds of properties; what the editor gives is no
 * ES module, and can be had itself.
 */
function editorInPlace(code) {
  return code.replace(/(?<![\w$])[\w$]+\((require\("vscode"\))\)/g, "$1");
}

/** What goes into a package is made smaller once more, which takes a minute and saves a twentieth of its weight. */
async function tightened(code) {
  if (!packaging) return code;
  const { code: smaller } = await minify(code, { ecma: 2022, compress: { passes: 2 } });
  return smaller;
}

/** Writes a bundled ES module as CommonJS. A dynamic import becomes a late `require`. */
async function writeAsCommonJs({ path: file, text }) {
  const required = requireNow(text);
  const code = await (development ? readableCommonJs(required) : commonJs(required));
  const isCommand = path.basename(file) === "cotter.cjs";
  await mkdir(path.dirname(file), { recursive: true });
  const small = await tightened(editorInPlace(code));
  await writeFile(file, isCommand ? `#!/usr/bin/env node\n${small}` : small);
  if (isCommand) await chmod(file, 0o755);
}

/**
 * What the package for the editor holds, in the form that vsce reads: what stands in .vscodeignore, and the parts of
 * all that the extension starts. Of the program `cotter` that is the one command that the editor's task runs.
 */
async function writePackageList(outputs) {
  const fileOf = (entry) => Object.keys(outputs).find((file) => outputs[file].entryPoint === entry);
  const needed = new Set();
  const take = (file, withLate) => {
    if (needed.has(file) || outputs[file] === undefined) return;
    needed.add(file);
    for (const { path: part, kind } of outputs[file].imports)
      if (withLate || kind !== "dynamic-import") take(part, withLate);
  };
  for (const entry of [programs.client, programs.server, ...browserPrograms.map(({ entry }) => entry)])
    take(fileOf(entry), true);
  for (const late of ["commands/check.ts", "called-build.ts"])
    take(fileOf(`late:server/command-line/${late}`), true);
  for (const start of [programs.cotter, "server/command-line/program.ts"]) take(fileOf(start), false);
  const own = await readFile(path.join(root, ".vscodeignore"), "utf8");
  const parts = [...needed].sort().map((file) => `!${file}\n`);
  await mkdir(output, { recursive: true });
  await writeFile(packageList, own + parts.join(""));
}

/**
 * The readme as the extension's page shows it: without pictures, which would weigh as much as all programs, and with
 * the names of the project's files in place of links, which lead nowhere from there.
 */
async function writePackagedReadme() {
  const text = await readFile(path.join(root, "README.md"), "utf8");
  const alone = text
    .replace(/:\n\n<picture>.*?<\/picture>\n/gs, ".\n")
    .replace(/\[([^\]]+)\]\((?![a-z]+:)([^)]+)\)/g, (_, words, file) =>
      words === file ? words : `${words} (\`${file}\`)`,
    )
    .replace(/^<!--.*-->\n/gm, "");
  await writeFile(packagedReadme, alone);
}

/** The licences of the packages inside the bundles, which have to travel with them. */
async function writeNotices(inputs) {
  const folders = new Set(inputs.map(packageFolderOf).filter((folder) => folder !== undefined));
  const texts = [];
  for (const folder of [...folders].sort()) {
    const manifest = JSON.parse(await readFile(path.join(root, folder, "package.json"), "utf8"));
    const title = `${manifest.name} ${manifest.version} (${manifest.license})`;
    const text = (await licenceTextIn(folder)) ?? "The package carries no licence text.";
    texts.push(`${title}\n${"-".repeat(title.length)}\n${text}\n`);
  }
  await mkdir(output, { recursive: true });
  await writeFile(notices, texts.join("\n"));
}

/** The folder of the package that a bundled file came from, or undefined for a file of the project. */
function packageFolderOf(input) {
  return /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input)?.[0];
}

async function licenceTextIn(folder) {
  for (const name of [
    "LICENSE",
    "LICENSE.md",
    "LICENSE.txt",
    "LICENCE",
    "LICENCE.md",
    "License.txt",
    "license",
  ]) {
    const file = path.join(root, folder, name);
    if (existsSync(file)) return (await readFile(file, "utf8")).trim();
  }
  return undefined;
}

/** Removes what an earlier build left, last, so that a program in use keeps its parts as long as possible. */
async function removeOthers(written) {
  for (const entry of await readdir(output, { recursive: true, withFileTypes: true })) {
    const file = path.join(entry.parentPath, entry.name);
    if (entry.isFile() && !written.has(file)) await rm(file);
  }
}

/**
 * Compiled code beside the parts that a short command loads: for the Node that builds, which is the one that will run them
 * from here. In the package there is none, since an editor brings another Node.
 */
async function compile() {
  const [script, sample] = [path.join(root, "compiled-code.mjs"), path.join(root, "samples/roadster")];
  await promisify(execFile)(process.execPath, [script, output, sample], { maxBuffer: 2 ** 24 });
}

function reportSizes(outputs) {
  const kilobytes = (bytes) => `${Math.ceil(bytes / 1024)} KB`;
  const files = Object.entries(outputs);
  const entries = [...Object.values(programs), ...browserPrograms.map(({ entry }) => entry)];
  const shared = files.filter(([, { entryPoint }]) => !entries.includes(entryPoint));
  for (const [file, { bytes }] of files.filter((entry) => !shared.includes(entry))) {
    console.log(`${file}  ${kilobytes(bytes)}`);
  }
  const sum = shared.reduce((total, [, { bytes }]) => total + bytes, 0);
  console.log(`${shared.length} files that these share or load late  ${kilobytes(sum)}`);
}

/** What a check is made of: the core of all programs. */
const CORE = ["server/rules/complaints.ts", "server/workspace/open-build.ts", "server/build/build.ts"];

/** @type {import("esbuild").BuildOptions} */
const ofAll = {
  absWorkingDir: root,
  bundle: true,
  minify: !development,
  sourcemap: development ? "inline" : false,
  legalComments: "none",
  metafile: true,
  write: false,
  logLevel: "warning",
  // What a library that was turned into ES modules would then lack.
  logOverride: { "import-is-undefined": "error", "call-import-namespace": "error" },
  alias: { minimatch: "./client/file-patterns.ts" },
};

/** @type {import("esbuild").BuildOptions} */
const onNode = {
  ...ofAll,
  outdir: "dist",
  entryNames: "[name]",
  chunkNames: "parts/[name]-[hash]",
  outExtension: { ".js": ".cjs" },
  splitting: true,
  format: "esm",
  platform: "node",
  target: "node20",
  external: ["vscode"],
  // Packages that offer both are taken as ES modules, of which only the used parts are kept.
  mainFields: ["module", "main"],
};

/**
 * The client by itself: what is used of a library stands in one file for all programs that are bundled together, and of
 * those of the protocol a client and a server use different halves.
 */
const forEditor = {
  ...onNode,
  entryPoints: { client },
  plugins: [librariesAsEsModules, writing("editor", writeAsCommonJs)],
};

/** @type {import("esbuild").BuildOptions} */
const forNode = {
  ...onNode,
  entryPoints: serverPrograms,
  plugins: [
    lateParts(root, CORE),
    librariesAsEsModules,
    withoutTexts,
    leanDecimals,
    leanParserLibrary(root),
    writing("Node", writeAsCommonJs),
  ],
};

/** @type {import("esbuild").BuildOptions[]} */
const forBrowser = browserPrograms.map(({ name, entry, format }) => ({
  ...ofAll,
  entryPoints: { [name]: entry },
  outdir: "dist/browser",
  format,
  platform: "browser",
  target: "es2022",
  external: ["vscode"],
  mainFields: ["browser", "module", "main"],
  plugins: [
    librariesAsEsModules,
    withoutTexts,
    leanDecimals,
    leanParserLibrary(root),
    writing(name, writeAsItIs),
  ],
}));

const bundlings = [forEditor, forNode, ...forBrowser];

if (watching) {
  for (const options of bundlings) await (await context({ ...options, logLevel: "info" })).watch();
} else {
  // esbuild has printed what was wrong.
  await Promise.all(bundlings.map(build)).catch(() => {
    process.exitCode = 1;
  });
}
