/** What stands in the programs in place of parts of chevrotain and of lodash does what they do. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { Plugin } from "esbuild";
import { build } from "esbuild";
import fc from "fast-check";
import { afterAll, expect, it } from "vitest";
import type { Document } from "../../grammar/document.ts";
import { generateLog } from "../bench/generate-log.ts";

const { leanParserLibrary } = (await import("../../bundling/parser-library.mjs" as string)) as {
  leanParserLibrary: (root: string) => Plugin;
};
const root = fileURLToPath(new URL("../../", import.meta.url));
const scratch = mkdtempSync(path.join(tmpdir(), "cotter-parser-"));
afterAll(() => rmSync(scratch, { recursive: true }));

async function bundled(name: string, plugins: Plugin[]): Promise<typeof Document> {
  const outfile = path.join(scratch, `${name}.mjs`);
  await build({
    entryPoints: [path.join(root, "grammar/document.ts")],
    bundle: true,
    format: "esm",
    platform: "node",
    logOverride: { "import-is-undefined": "error" },
    plugins,
    outfile,
  });
  return ((await import(pathToFileURL(outfile).href)) as { Document: typeof Document }).Document;
}

const [Whole, Lean] = await Promise.all([bundled("whole", []), bundled("lean", [leanParserLibrary(root)])]);

const samples = readdirSync(path.join(root, "samples"), { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".cotter"))
  .map((file) => readFileSync(path.join(root, "samples", file), "utf8"));

const [whole, lean] = [Whole, Lean].map((of) => (text: string) => JSON.stringify(of.read(text).blocks));

it("reads the samples as the whole library does", () => {
  expect(samples.length).toBeGreaterThan(10);
  for (const text of samples) expect(lean?.(text)).toBe(whole?.(text));
});

it("reads a log with many broken lines as the whole library does", () => {
  for (const { text } of generateLog({ lines: 2000, broken: 0.5 })) expect(lean?.(text)).toBe(whole?.(text));
});

it("reads any mixture of lines as the whole library does", () => {
  const lines = samples.flatMap((text) => text.split("\n"));
  const torn = fc
    .tuple(fc.constantFrom(...lines), fc.nat(80), fc.nat(12), fc.constantFrom(...lines))
    .map(
      ([line, from, length, other]) =>
        line.slice(0, from) + other.slice(from, from + length) + line.slice(from),
    );
  const text = fc.array(fc.oneof(fc.constantFrom(...lines), torn), { maxLength: 30 });
  fc.assert(
    fc.property(text, (chosen) => {
      expect(lean?.(chosen.join("\n"))).toBe(whole?.(chosen.join("\n")));
    }),
  );
});

/** As the installed library has it, from where chevrotain finds it. */
const ofChevrotain = createRequire(createRequire(import.meta.url).resolve("chevrotain"));
type Functions = Readonly<Record<string, (...given: unknown[]) => unknown>>;
const original = (await import(pathToFileURL(ofChevrotain.resolve("lodash-es")).href)) as Functions;
const own = (await import("../../bundling/lodash.mjs" as string)) as Functions;

const scalar = fc.oneof(
  fc.integer({ min: -3, max: 3 }),
  fc.constantFrom("", "a", "bc", true, undefined, Number.NaN),
);
const list = fc.array(scalar, { maxLength: 5 });
const lists = fc.array(fc.oneof(scalar, list), { maxLength: 5 });
const object = fc.dictionary(fc.constantFrom("a", "b", "c", "length2"), scalar, { noNullPrototype: true });
const collection = fc.oneof(list, object);
const anything = fc.oneof(
  scalar,
  list,
  object,
  fc.constantFrom(null, /a/, () => 1),
);
const given = (each: unknown) => (value: unknown) => (each === "truth" ? Boolean(value) : [value, each]);

/** What each is called with: as chevrotain calls it. */
const CALLS: Readonly<Record<string, fc.Arbitrary<unknown[]>>> = {
  assign: fc.tuple(object, object),
  clone: fc.tuple(fc.oneof(scalar, collection)),
  compact: fc.tuple(list),
  defaults: fc.tuple(object, object),
  difference: fc.tuple(list, list),
  drop: fc.oneof(fc.tuple(list), fc.tuple(list, fc.nat(7))),
  dropRight: fc.oneof(fc.tuple(list), fc.tuple(list, fc.nat(7))),
  every: fc.tuple(collection, fc.constant(given("truth"))),
  filter: fc.tuple(collection, fc.constant(given("truth"))),
  find: fc.tuple(collection, fc.constant(given("truth"))),
  first: fc.tuple(fc.option(list, { nil: undefined })),
  flatMap: fc.tuple(collection, fc.constant(given("each"))),
  flatten: fc.tuple(lists),
  groupBy: fc.tuple(list, fc.constant(String)),
  has: fc.tuple(fc.oneof(object, fc.constantFrom(undefined, null)), fc.constantFrom("a", "b", "toString")),
  identity: fc.tuple(anything),
  includes: fc.tuple(
    fc.oneof(collection, fc.constantFrom("abc", "")),
    fc.constantFrom("a", "bc", 1, Number.NaN),
  ),
  indexOf: fc.tuple(list, fc.constantFrom("a", 1, true)),
  isArray: fc.tuple(anything),
  isEmpty: fc.tuple(fc.oneof(collection, fc.constantFrom("", "a", undefined, null))),
  isFunction: fc.tuple(anything),
  isObject: fc.tuple(anything),
  isRegExp: fc.tuple(anything),
  isString: fc.tuple(anything),
  isUndefined: fc.tuple(anything),
  keys: fc.tuple(fc.oneof(collection, fc.constant(undefined))),
  last: fc.tuple(fc.option(list, { nil: undefined })),
  map: fc.tuple(fc.oneof(collection, fc.constant(undefined)), fc.constant(given("each"))),
  noop: fc.tuple(anything),
  pickBy: fc.tuple(object, fc.constant(given("truth"))),
  reduce: fc.tuple(
    collection,
    fc.constant((all: unknown, value: unknown, key: unknown) => [all, value, key]),
    scalar,
  ),
  reject: fc.tuple(collection, fc.constant(given("truth"))),
  some: fc.tuple(collection, fc.constant(given("truth"))),
  uniq: fc.tuple(list),
  upperFirst: fc.tuple(fc.constantFrom("", "a", "abC", "Abc")),
  values: fc.tuple(fc.oneof(collection, fc.constant(undefined))),
};

it.each(Object.keys(own).filter((name) => name !== "forEach"))("%s does what lodash does", (name) => {
  const calls = CALLS[name];
  if (calls === undefined) throw new Error(`${name} is not tried here`);
  fc.assert(
    fc.property(calls, (words) => {
      const [ownWords, theirWords] = [structured(words), structured(words)];
      expect(own[name]?.(...ownWords)).toEqual(original[name]?.(...theirWords));
      expect(ownWords).toEqual(theirWords);
    }),
  );
});

/** A copy, so that what is changed in place is seen. */
function structured(words: readonly unknown[]): unknown[] {
  return words.map((word) => (Array.isArray(word) ? [...word] : isPlain(word) ? { ...word } : word));
}

function isPlain(value: unknown): value is object {
  return typeof value === "object" && value !== null && Object.getPrototypeOf(value) === Object.prototype;
}

it("forEach goes through a list or an object until it is told to stop, as lodash does", () => {
  fc.assert(
    fc.property(fc.oneof(collection, fc.constant(undefined)), fc.nat(6), (of, most) => {
      const [seen, ofTheirs] = [own, original].map(({ forEach }) => {
        const all: unknown[] = [];
        forEach?.(of, (value: unknown, key: unknown) => {
          all.push([value, key]);
          return all.length < most;
        });
        return all;
      });
      expect(seen).toEqual(ofTheirs);
    }),
  );
});

it("is asked for nothing of lodash that it has not", () => {
  const folder = path.dirname(createRequire(import.meta.url).resolve("chevrotain"));
  const asked = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(".js") && !file.includes("diagrams"))
    .flatMap((file) => [
      ...readFileSync(path.join(folder, file), "utf8").matchAll(/import \{([^}]*)\} from "lodash-es"/g),
    ])
    .flatMap(([, names = ""]) => names.split(",").map((name) => name.trim().split(" as ")[0] ?? ""));
  expect(new Set(asked.filter((name) => name !== "" && !(name in own)))).toEqual(new Set());
});
