// Builds what is shipped into dist/: the programs that Node starts, and the parts that they share or load late.
//
//   node esbuild.mjs                  minified, without source maps: what is packaged
//   node esbuild.mjs --development    readable, with source maps: for the debugger
//   node esbuild.mjs --watch          the same again after each change
//
// Reading a megabyte of script costs Node some 60 ms, so a program reads only what it needs: code that is needed
// late is written as `await import("./late.ts")` where it is needed, and becomes a file of its own. esbuild
// divides a program so only into ES modules, while an extension host wants CommonJS and starts it sooner.
// Therefore two steps: bundle and divide as ES modules, then turn each file into CommonJS.
import { existsSync } from "node:fs";
import { chmod, mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { build, context, transform } from "esbuild";

const root = path.dirname(fileURLToPath(import.meta.url));
const output = path.join(root, "dist");
const notices = path.join(output, "THIRD-PARTY-NOTICES.txt");
const watching = process.argv.includes("--watch");
const development = watching || process.argv.includes("--development");

/** The programs: the name of the file in dist/, and the module that it starts with. */
const programs = {
  client: "client/extension.ts",
  server: "server/language-server/main.ts",
  cotter: "server/command-line/main.ts",
};

/** Writes each bundled ES module as CommonJS. A dynamic import becomes a late `require`. */
const commonJs = {
  name: "CommonJS",
  setup(bundling) {
    bundling.onEnd(async ({ errors, outputFiles, metafile }) => {
      if (errors.length > 0) return;
      await Promise.all(outputFiles.map(writeAsCommonJs));
      await writeNotices(Object.keys(metafile.inputs));
      await removeOthers(new Set([...outputFiles.map((file) => file.path), notices]));
      reportSizes(metafile.outputs);
    });
  },
};

async function writeAsCommonJs({ path: file, text }) {
  const { code } = await transform(text, {
    format: "cjs",
    platform: "node",
    target: "node20",
    supported: { "dynamic-import": false },
    minify: !development,
    sourcemap: development ? "inline" : false,
  });
  const isCommand = path.basename(file) === "cotter.cjs";
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(file, isCommand ? `#!/usr/bin/env node\n${code}` : code);
  if (isCommand) await chmod(file, 0o755);
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

function reportSizes(outputs) {
  const kilobytes = (bytes) => `${Math.ceil(bytes / 1024)} KB`;
  const files = Object.entries(outputs);
  const shared = files.filter(([, { entryPoint }]) => !Object.values(programs).includes(entryPoint));
  for (const [file, { bytes }] of files.filter((entry) => !shared.includes(entry))) {
    console.log(`${file}  ${kilobytes(bytes)}`);
  }
  const sum = shared.reduce((total, [, { bytes }]) => total + bytes, 0);
  console.log(`${shared.length} files that these share or load late  ${kilobytes(sum)}`);
}

const entryPoints = Object.fromEntries(
  Object.entries(programs).filter(([, entry]) => {
    const exists = existsSync(path.join(root, entry));
    if (!exists) console.log(`${entry} is not there yet: skipped`);
    return exists;
  }),
);

/** @type {import("esbuild").BuildOptions} */
const options = {
  absWorkingDir: root,
  entryPoints,
  outdir: "dist",
  entryNames: "[name]",
  chunkNames: "parts/[name]-[hash]",
  outExtension: { ".js": ".cjs" },
  bundle: true,
  splitting: true,
  format: "esm",
  platform: "node",
  target: "node20",
  external: ["vscode"],
  // Packages that offer both are taken as ES modules, of which only the used parts are kept.
  mainFields: ["module", "main"],
  minify: !development,
  sourcemap: development ? "inline" : false,
  legalComments: "none",
  metafile: true,
  write: false,
  logLevel: "warning",
  plugins: [commonJs],
};

if (watching) await (await context({ ...options, logLevel: "info" })).watch();
else {
  // esbuild has printed what was wrong.
  await build(options).catch(() => {
    process.exitCode = 1;
  });
}
