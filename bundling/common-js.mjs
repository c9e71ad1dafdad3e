// A bundled ES module as CommonJS. esbuild turns it, with helpers for modules of any origin, of which each file gets its own,
// half a kilobyte, and through which each of the names that it gives is looked up twice. Ours come from one build, and know what
// the others give: so they get shorter helpers.
import { transform } from "esbuild";

/** @type {import("esbuild").TransformOptions} */
const AS_COMMON_JS = {
  format: "cjs",
  platform: "node",
  target: "node20",
  supported: { "dynamic-import": false },
};

const HELPERS = {
  __export: `var __export = (to, all) => {
  for (const name in all) Object.defineProperty(to, name, { get: all[name], enumerable: true });
};\n`,
  // What Node or the editor brings, which is no ES module: as a whole, and by its names.
  __toESM: "var __toESM = (it) => ({ __proto__: it, default: it });\n",
};

/** Readable, with the helpers of esbuild, and with a map. */
export async function readableCommonJs(text) {
  return (await transform(text, { ...AS_COMMON_JS, sourcemap: "inline" })).code;
}

export async function commonJs(text) {
  const { code } = await transform(text, AS_COMMON_JS);
  return (await transform(withShortHelpers(code), { format: "cjs", target: "node20", minify: true })).code;
}

/**
 * @param code as esbuild writes a CommonJS module
 * @throws {Error} where something is left that asks for another helper
 */
export function withShortHelpers(code) {
  const own = code
    .replace(/^var __\w+ = (?:.*;|[\s\S]*?^[})]+;)\n/gm, "")
    .replace(/^var (\w+_exports) = \{\};\n__export\(\1, /m, "__export(exports, ")
    .replace(/^module\.exports = __toCommonJS\(\w+_exports\);\n/m, "")
    .replace(/\b__toESM\((require\("\.[^"]+"\))\)/g, "$1");
  const asked = new Set([...own.matchAll(/\b(__[a-zA-Z]\w*)\(/g)].map(([, name]) => name));
  const unknown = [...asked].find((name) => HELPERS[name] === undefined);
  if (unknown !== undefined || /\b__toCommonJS\b/.test(own))
    throw new Error(`no short helper for ${unknown}`);
  return [...asked].map((name) => HELPERS[name]).join("") + own;
}
