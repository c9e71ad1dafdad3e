/** Of decimal.js nothing is left out of the programs that they call, and the rest is what it was. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { Decimal } from "decimal.js";
import type { Plugin } from "esbuild";
import { build } from "esbuild";
import fc from "fast-check";
import ts from "typescript";
import { afterAll, expect, it } from "vitest";

const { leanDecimals, LEFT_OUT, OF_CONSTRUCTOR, withoutFunctions } = (await import(
  "../../bundling/decimals.mjs" as string
)) as {
  leanDecimals: Plugin;
  LEFT_OUT: string[];
  OF_CONSTRUCTOR: string[];
  withoutFunctions: (text: string, file: string) => string;
};
const root = fileURLToPath(new URL("../../", import.meta.url));
const scratch = mkdtempSync(path.join(tmpdir(), "cotter-decimals-"));
afterAll(() => rmSync(scratch, { recursive: true }));

const outfile = path.join(scratch, "decimals.mjs");
await build({
  stdin: { contents: 'export { Decimal } from "decimal.js";', resolveDir: root },
  bundle: true,
  format: "esm",
  mainFields: ["module"],
  plugins: [leanDecimals],
  outfile,
});
const { Decimal: Lean } = (await import(pathToFileURL(outfile).href)) as { Decimal: typeof Decimal };

/** The functions of one, each with all of its names. */
function namesOf(one: object): string[] {
  const names = Object.getOwnPropertyNames(one).filter((name) => !["length", "name"].includes(name));
  return names.filter((name) => typeof (one as Record<string, unknown>)[name] === "function");
}
const missing = (whole: object, lean: object) =>
  namesOf(whole).filter((name) => !namesOf(lean).includes(name));
const gone = { decimal: missing(Decimal.prototype, Lean.prototype), constructor: missing(Decimal, Lean) };

it("lacks what is left out, by each of its names, and nothing else", () => {
  const leftOut = LEFT_OUT.map((name) => Decimal.prototype[name as keyof Decimal]);
  const withSameFunction = namesOf(Decimal.prototype).filter((name) =>
    leftOut.includes(Decimal.prototype[name as keyof Decimal]),
  );
  expect(gone.decimal.sort()).toEqual(withSameFunction.sort());
  expect(namesOf(Lean)).toEqual(expect.arrayContaining(OF_CONSTRUCTOR));
});

it("is asked for nothing that it lacks", { timeout: 120_000 }, () => {
  const config = ts.readConfigFile(path.join(root, "tsconfig.json"), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config.config, ts.sys, root);
  const entries = ["server/language-server/main.ts", "server/command-line/main.ts"];
  const program = ts.createProgram(
    entries.map((file) => path.join(root, file)),
    { ...options, noEmit: true },
  );
  const checker = program.getTypeChecker();
  const asked = new Set<string>();
  // What is declared where is looked up for these names alone: it takes the most time.
  const known = ["plus", "asin", "acos"];
  const names = new Set([...gone.decimal, ...gone.constructor, ...known]);
  const visit = (node: ts.Node): void => {
    if (ts.isPropertyAccessExpression(node) && names.has(node.name.text)) {
      const declared = checker.getSymbolAtLocation(node.name)?.declarations?.[0];
      if (declared?.getSourceFile().fileName.endsWith("decimal.js/decimal.d.ts") === true) {
        const isStatic = (ts.getCombinedModifierFlags(declared) & ts.ModifierFlags.Static) !== 0;
        asked.add(`${isStatic ? "constructor" : "decimal"}: ${node.name.text}`);
      }
    }
    ts.forEachChild(node, visit);
  };
  for (const file of program.getSourceFiles()) if (!file.fileName.includes("node_modules")) visit(file);
  expect([...asked]).toEqual(expect.arrayContaining(["decimal: plus", "decimal: asin", "constructor: acos"]));
  const lacking = Object.entries(gone).flatMap(([of, names]) => names.map((name) => `${of}: ${name}`));
  expect(lacking.filter((name) => asked.has(name))).toEqual([]);
});

it("computes as the whole library does", () => {
  const settings = { precision: 34, rounding: Decimal.ROUND_HALF_EVEN, modulo: Decimal.EUCLID } as const;
  const numberOf = (most: number) =>
    fc
      .tuple(fc.bigInt({ min: -(10n ** 34n), max: 10n ** 34n }), fc.integer({ min: -40, max: most }))
      .map(([digits, exponent]) => `${digits}e${exponent}`);
  const number = numberOf(20);
  const ofTwo = ["plus", "minus", "times", "div", "mod", "comparedTo", "equals"] as const;
  const ofOne = ["sin", "cos", "asin", "acos", "atan", "sqrt", "cbrt", "round", "floor", "abs"] as const;
  fc.assert(
    fc.property(
      number,
      numberOf(-31),
      fc.constantFrom(...ofTwo),
      fc.constantFrom(...ofOne),
      (a, b, two, one) => {
        // Anew each time: what fails within leaves its settings behind.
        const [Whole, Bundled] = [Decimal.clone(settings), Lean.clone(settings)];
        expect(`${new Bundled(a)[two](b)}`).toBe(`${new Whole(a)[two](b)}`);
        expect(`${new Bundled(b)[one]()}`).toBe(`${new Whole(b)[one]()}`);
      },
    ),
  );
  const [Whole, Bundled] = [Decimal.clone(settings), Lean.clone(settings)];
  // The most digits that any number of ours has.
  const wide = { precision: 130 };
  const [WideWhole, WideBundled] = [Decimal.clone(wide), Lean.clone(wide)];
  for (const text of ["0.5", "-1", "123456789.123456789"]) {
    expect(`${new WideBundled(text).atan()}`).toBe(`${new WideWhole(text).atan()}`);
    expect(`${new WideBundled(text).sin()}`).toBe(`${new WideWhole(text).sin()}`);
    expect(`${new WideBundled("7.3e-99").pow(text)}`).toBe(`${new WideWhole("7.3e-99").pow(text)}`);
  }
  const power = fc.tuple(fc.double({ min: 0.001, max: 100, noNaN: true }), fc.integer({ min: -90, max: 90 }));
  fc.assert(
    fc.property(power, ([base, tenths]) => {
      expect(`${new Bundled(base).pow(tenths / 10)}`).toBe(`${new Whole(base).pow(tenths / 10)}`);
    }),
  );
});

it("stops the build where the library is written otherwise", () => {
  expect(() => withoutFunctions("P.toBinary = toBinary;", "decimal.mjs")).toThrow("otherwise than expected");
});
