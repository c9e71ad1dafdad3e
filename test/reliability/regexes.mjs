// Whether every regular expression of the programs takes time linear in what it is looked for in: those written in the
// source, and those put together as it is loaded, by `recheck`. It is installed into a folder that git ignores.
import { spawnSync } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import ts from "typescript";
import { root } from "./figures.mjs";

const home = path.join(root, "node_modules/.cache/recheck");
const RECHECK = "4.5.0";

export async function checkRegexes() {
  install();
  const { checkSync } = createRequire(path.join(home, "package.json"))("recheck");
  const files = ["grammar", "server", "client", "media"].flatMap((folder) =>
    readdirSync(path.join(root, folder), { recursive: true })
      .filter((name) => /\.(?:ts|js)$/.test(name) && !name.endsWith(".d.ts"))
      .map((name) => `${folder}/${name}`),
  );
  const found = [...files.flatMap(literalsIn), ...(await madeWhileLoading(files))];
  const slow = [];
  const counts = { safe: 0, vulnerable: 0, unknown: 0 };
  for (const { where, source, flags } of found) {
    const { status, complexity } = checkSync(source, flags, { timeout: 20_000 });
    counts[status]++;
    if (status !== "safe") slow.push(`${where} /${source}/${flags}: ${complexity?.summary ?? status}`);
  }
  return { counts, slow };
}

function install() {
  if (existsSync(path.join(home, "node_modules/recheck"))) return;
  mkdirSync(home, { recursive: true });
  writeFileSync(path.join(home, "package.json"), '{"private":true}\n');
  const words = ["install", "--no-audit", "--no-fund", `recheck@${RECHECK}`];
  const { status } = spawnSync("npm", words, { cwd: home, stdio: "inherit" });
  if (status !== 0) throw new Error("recheck could not be installed");
}

function literalsIn(file) {
  const text = readFileSync(path.join(root, file), "utf8");
  const tree = ts.createSourceFile(file, text, ts.ScriptTarget.Latest);
  const found = [];
  const visit = (node) => {
    if (ts.isRegularExpressionLiteral(node)) {
      const [, source, flags] = /^\/(.*)\/([a-z]*)$/s.exec(node.text);
      const { line } = tree.getLineAndCharacterOfPosition(node.getStart(tree));
      found.push({ where: `${file}:${line + 1}`, source, flags });
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

/** Those that are put together at the top of a module: the modules are loaded, and who asks for a RegExp is noted. */
async function madeWhileLoading(files) {
  const folder = mkdtempSync(path.join(tmpdir(), "cotter-regexes-"));
  const makers = files.filter((file) => /new RegExp\(/.test(readFileSync(path.join(root, file), "utf8")));
  const outfile = path.join(folder, "makers.mjs");
  const found = [];
  const Plain = globalThis.RegExp;
  try {
    await build({
      stdin: {
        contents: makers.map((file) => `export * from "./${file}";`).join("\n"),
        resolveDir: root,
      },
      outfile,
      bundle: true,
      format: "esm",
      platform: "node",
      external: ["vscode"],
      logLevel: "error",
    });
    globalThis.RegExp = new Proxy(Plain, {
      construct: (target, words) => {
        const made = Reflect.construct(target, words);
        found.push({ where: "put together", source: made.source, flags: made.flags });
        return made;
      },
    });
    await import(pathToFileURL(outfile).href);
  } finally {
    globalThis.RegExp = Plain;
    rmSync(folder, { recursive: true, force: true });
  }
  return found;
}
