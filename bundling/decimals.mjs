// Of decimal.js the programs carry the functions that they call. Each of its functions is put into the prototype or into a
// constructor, of which a bundler can leave nothing out: so what nobody calls is taken out of its text before.
// `test/bundling/decimals.test.ts` sees to it that nobody does, and that the rest is what it was.
import { readFile } from "node:fs/promises";

/** By their long names, of what a decimal can do. */
export const LEFT_OUT = [
  "clampedTo",
  "hyperbolicCosine",
  "hyperbolicSine",
  "hyperbolicTangent",
  "inverseHyperbolicCosine",
  "inverseHyperbolicSine",
  "inverseHyperbolicTangent",
  "logarithm",
  "tangent",
  "toBinary",
  "toFraction",
  "toHexadecimal",
  "toNearest",
  "toOctal",
];

/** Of the functions that belong to the constructor, what is called, here or by the library itself; all others are left out. */
export const OF_CONSTRUCTOR = ["acos", "clone", "config", "isDecimal", "pow"];

/** Digits that are kept of each of its constants, of 1025: more than any number of ours has (server/quantities/decimal.ts). */
const DIGITS = 300;

export const leanDecimals = {
  name: "lean decimals",
  setup(bundling) {
    bundling.onLoad({ filter: /[\\/]decimal\.js[\\/]decimal\.mjs$/ }, async ({ path: file }) => ({
      contents: withoutFunctions(await readFile(file, "utf8"), file),
      loader: "js",
    }));
  },
};

/** @throws {Error} where it is not written as expected, or calls what is left out of it: another release may be otherwise */
export function withoutFunctions(text, file) {
  const otherwise = (what) => new Error(`${file} ${what} otherwise than expected`);
  const names = [];
  const code = text.replaceAll("\r\n", "\n").replace(/\/\*[\s\S]*?\*\//g, "");
  const lean = LEFT_OUT.reduce((rest, name) => {
    const written = new RegExp(
      `^P\\.${name} = (?:P\\.(\\w+) = )?function \\(.*\\) \\{\\n[\\s\\S]*?^\\};\\n`,
      "m",
    );
    const found = written.exec(rest);
    if (found === null) throw otherwise(`writes ${name}`);
    names.push(name, ...found.slice(1).filter((short) => short !== undefined));
    return rest.replace(found[0], "");
  }, code);
  const called = new RegExp(`\\w\\.(?:${names.join("|")})\\(`).exec(lean.replace(/\bMath\.\w+/g, ""));
  if (called !== null) throw otherwise(`calls ${called[0]})`);
  const constants = /\b(LN10|PI) = '(\d\.\d{1000,})'/g;
  if ([...lean.matchAll(constants)].length !== 2) throw otherwise("writes its constants");
  const assigned = /^ {2}Decimal\.([a-z]\w*) = \1; *(?:\/\/ ES6)?\n/gm;
  if ([...lean.matchAll(assigned)].length < 30) throw otherwise("makes its constructor");
  return lean
    .replace(constants, (_, name, digits) => `${name} = '${digits.slice(0, DIGITS + 1)}'`)
    .replace(assigned, (line, name) => (OF_CONSTRUCTOR.includes(name) ? line : ""));
}
