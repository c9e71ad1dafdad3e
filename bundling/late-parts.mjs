// What is loaded late. Two ways lead to a part of its own:
//
// - `await import("./late.ts")` in the text, where there is time to wait;
// - the list below: modules that most logs never need, but that are needed at once where they are. The text imports them as
//   it imports all others, and here each of their functions becomes one that loads the part at its first call.
import { readFile } from "node:fs/promises";
import path from "node:path";

/** They export functions, of which others call none while they are loaded. */
const ON_FIRST_CALL = new Set([
  "grammar/vocabulary/texts-of.ts",
  // Only a log that calculates evaluates, and few of these with more than plain quantities, or what is refused.
  "server/expressions/evaluate.ts",
  "server/expressions/names.ts",
  "server/expressions/angles.ts",
  "server/expressions/interval-arithmetic.ts",
  "server/expressions/money-arithmetic.ts",
  "server/expressions/powers.ts",
  "server/expressions/trade-fault.ts",
  "server/expressions/trade-words.ts",
  "server/quantities/powers.ts",
  // Of the functions of the trade, those of the subjects that it calls.
  "server/trade/alignment.ts",
  "server/trade/bolt-functions.ts",
  "server/trade/brakes.ts",
  "server/trade/drive.ts",
  "server/trade/electric-functions.ts",
  "server/trade/engine.ts",
  "server/trade/fits.ts",
  "server/trade/measurement.ts",
  "server/trade/shafts.ts",
  "server/trade/springs.ts",
  "server/trade/thread-functions.ts",
  "server/trade/tightening-functions.ts",
  // Only one with names that nobody knows.
  "server/build/tree/likely-paths.ts",
  "server/rules/notation/defining-fixes.ts",
  // Only one in which something was identified asks what it can be.
  "server/rules/supply/contradictions.ts",
  "server/trade/identification.ts",
  "server/trade/identification/tell-apart.ts",
  "server/trade/iso286.ts",
  "server/quantities/unit-advice.ts",
  // Only one that somebody writes in is read again.
  "server/build/replay/same-states.ts",
  // What an editor asks for by requests of its own.
  "server/language-server/features/code-lens.ts",
  "server/language-server/features/folding.ts",
  "server/language-server/features/formatting.ts",
  "server/language-server/features/inlay-hints.ts",
  "server/language-server/features/links.ts",
  "server/language-server/features/moved-files.ts",
  "server/language-server/features/selection.ts",
  "server/language-server/features/semantic-tokens.ts",
  "server/language-server/features/symbols.ts",
  "server/language-server/features/views/branch.ts",
  "server/language-server/features/views/overview.ts",
  "server/language-server/features/views/still-open.ts",
  "server/language-server/features/views/to-order.ts",
  "server/language-server/features/views/writing-places.ts",
  "server/language-server/names/subject-at.ts",
  "server/history/git-fault.ts",
]);

/** What the text of a bundle says of a part that is loaded in the middle of a call, until it is turned into CommonJS. */
const NOW = "__loadNow";

/** In a bundled ES module: such parts are required. */
export function requireNow(text) {
  return text.replace(new RegExp(`\\b${NOW}\\(\\s*import\\(("[^"]+")\\)\\s*\\)`, "g"), "require($1)");
}

/**
 * Keeps the core in one file, which is read sooner than fifty. esbuild makes a file of all modules that the same programs
 * and late parts need; so here every late part needs the whole core, though it may use little of it. The need stands in a
 * module of its own before the late one, not in it: the core may hold the late one, and modules that import each other in a
 * circle run in another order.
 *
 * @param core the modules that make the core, by their paths below `root`
 */
export const lateParts = (root, core) => ({
  name: "late parts",
  setup(bundling) {
    // What an entry loads late is the rest of its program, and not yet the core.
    const entries = new Set(
      Object.values(bundling.initialOptions.entryPoints).map((file) => path.join(root, file)),
    );
    bundling.onResolve({ filter: /\.ts$/ }, ({ path: file, kind, importer, namespace, resolveDir }) => {
      const found = path.relative(root, path.resolve(resolveDir, file)).replaceAll(path.sep, "/");
      const ofServer = namespace === "on first call" || importer.startsWith(path.join(root, "server"));
      if (kind === "dynamic-import" && ofServer && !entries.has(importer))
        return { path: found, namespace: "late" };
      return kind === "import-statement" && namespace !== "late" && ON_FIRST_CALL.has(found)
        ? { path: found, namespace: "on first call", sideEffects: false }
        : undefined;
    });
    bundling.onLoad({ filter: /./, namespace: "late" }, ({ path: file }) => ({
      contents: [...core, file]
        .map((module, index, all) => {
          const what = index === all.length - 1 ? "export * from" : "import";
          return `${what} ${JSON.stringify(path.join(root, module))};`;
        })
        .join("\n"),
      resolveDir: root,
    }));
    bundling.onLoad({ filter: /./, namespace: "on first call" }, async ({ path: file }) => ({
      contents: onFirstCall(file, await readFile(path.join(root, file), "utf8")),
      resolveDir: root,
    }));
  },
});

/** A module with the functions of another, each of which loads it when it is first called. */
function onFirstCall(file, text) {
  const names = [...text.matchAll(/^export (?:async )?function\*? (\w+)/gm)].map(([, name]) => name);
  const functions = names.map(
    (name) => `export function ${name}(...given) { return part().${name}(...given); }`,
  );
  return [
    "let loaded;",
    `const part = () => (loaded ??= ${NOW}(import(${JSON.stringify(`./${file}`)})));`,
    ...functions,
  ].join("\n");
}
