// Texts that are only told when they are looked up are taken out of the tables that they stand in, and become a late part:
// for each of these tables there is a module that lists its texts, and here it stands as it is when it has run.
import { readFile } from "node:fs/promises";
import { build } from "esbuild";

/** @typedef {{ from: RegExp, keys: string[], list: RegExp }} Table */

/** Where texts stand, by which keys, and the module that lists them. @type {Table[]} */
const TABLES = [
  {
    from: /[\\/]server[\\/]rules[\\/][a-z]+[\\/][^\\/]+\.ts$/,
    keys: ["bad", "good", "summary", "why", "remedy"],
    list: /[\\/]server[\\/]rules[\\/]texts\.ts$/,
  },
  {
    from: /[\\/]grammar[\\/]vocabulary[\\/](?:blocks|vocabulary|[a-z]+-(?:facts|records))\.ts$/,
    keys: ["help", "example", "bad", "choice"],
    list: /[\\/]grammar[\\/]vocabulary[\\/]texts\.ts$/,
  },
  {
    from: /[\\/]server[\\/](?:trade|expressions)[\\/][a-z-]+\.ts$/,
    keys: ["doc", "summary", "formula", "meaning", "limits"],
    list: /[\\/]server[\\/]expressions[\\/]function-texts\.ts$/,
  },
];

const LITERAL = /"(?:[^"\\\n]|\\.)*"|'(?:[^'\\\n]|\\.)*'|`(?:[^`\\]|\\.)*`/;

export const withoutTexts = {
  name: "without texts",
  setup(bundling) {
    for (const { from, keys, list } of TABLES) {
      bundling.onLoad({ filter: list }, async ({ path: file }) => ({
        contents: await asItIs(file),
        loader: "js",
      }));
      const text = new RegExp(`\\b(${keys.join("|")}):\\s*(?:${LITERAL.source})`, "g");
      bundling.onLoad({ filter: from }, async ({ path: file }) => ({
        contents: (await readFile(file, "utf8")).replace(text, '$1: ""'),
        loader: "ts",
      }));
    }
  },
};

/** A module of one table of texts, as the table that it makes. */
async function asItIs(file) {
  const options = { entryPoints: [file], bundle: true, write: false, format: "esm", logLevel: "warning" };
  const { outputFiles } = await build(options);
  const code = Buffer.from(outputFiles[0].contents).toString("base64");
  const [[name, texts], ...others] = Object.entries(await import(`data:text/javascript;base64,${code}`));
  if (others.length > 0) throw new Error(`${file} makes more than one table`);
  const json = JSON.stringify([...texts]);
  return `export const ${name} = ${texts instanceof Map ? `new Map(${json})` : json};`;
}
