// Whether every regular expression of the programs takes time linear in what it is looked for in: those written in the
// source, and those put together as it is loaded, by `recheck`. It is installed into a folder that git ignores.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import ts from "typescript";
import { root } from "./figures.mjs";
import { installed } from "./installed.mjs";

const LAST_THOUSAND = "what stands before the cursor, a thousand characters at most";

/** Patterns that take time in the square of a text, and why the text that each meets is short or ends it at once. */
const SHORT = {
  'server/language-server/text/due.ts /(?:[A-Za-z_*][A-Za-z0-9_.*]*)?(?:\\{[^{}"]*)?$/': LAST_THOUSAND,
  "server/language-server/text/due.ts /(?:^|[\\s,(±=]|\\.\\.)[-+\\u2212]?\\d[\\d./]*(?:\\s+|(?=[A-Za-zµμ°%']))([A-Za-zµμΩ°%'][\\w.·/^µμΩ°%']*)?$/":
    LAST_THOUSAND,
};

export async function checkRegexes() {
  const home = installed("recheck", { recheck: "4.5.0" });
  const { checkSync } = createRequire(path.join(home, "package.json"))("recheck");
  const files = ["grammar", "server", "client", "media"].flatMap((folder) =>
    readdirSync(path.join(root, folder), { recursive: true })
      .filter((name) => /\.(?:ts|js)$/.test(name) && !name.endsWith(".d.ts"))
      .map((name) => `${folder}/${name}`),
  );
  const found = [...files.flatMap(literalsIn), ...(await madeWhileLoading(files))];
  const counts = { proved: 0, searched: 0, short: 0 };
  const faults = [];
  const short = [];
  for (const { file, line, source, flags } of found) {
    const { status, complexity, attack } = checkSync(source, flags, { timeout: 180_000 });
    const why = SHORT[`${file} /${source}/`];
    if (status === "safe" || (complexity?.isFuzz && !isSlow(new RegExp(source, flags), attack)))
      counts[complexity.isFuzz ? "searched" : "proved"]++;
    else if (why === undefined)
      faults.push(`${file}:${line} /${source}/${flags}: ${complexity?.summary ?? status}`);
    else {
      counts.short++;
      short.push(`${file} /${source}/: ${why}`);
    }
  }
  return { counts, short, faults };
}

/** Of what was found by search, not proved: whether 40,000 characters of it take more than a moment. */
function isSlow(pattern, { pumps, suffix }) {
  const period = pumps.reduce((sum, { pump }) => sum + pump.length, 0);
  const times = Math.ceil(40_000 / period);
  const text = pumps.map(({ prefix, pump }) => prefix + pump.repeat(times)).join("") + suffix;
  const began = performance.now();
  pattern.test(text);
  return performance.now() - began > 100;
}

function literalsIn(file) {
  const text = readFileSync(path.join(root, file), "utf8");
  const tree = ts.createSourceFile(file, text, ts.ScriptTarget.Latest);
  const found = [];
  const visit = (node) => {
    if (ts.isRegularExpressionLiteral(node)) {
      const [, source, flags] = /^\/(.*)\/([a-z]*)$/s.exec(node.text);
      const { line } = tree.getLineAndCharacterOfPosition(node.getStart(tree));
      found.push({ file, line: line + 1, source, flags });
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
        found.push({ file: "put together", line: 0, source: made.source, flags: made.flags });
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
