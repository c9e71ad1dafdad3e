// What may stand at each choice of the grammar, worked out when the programs are built: chevrotain does it each time that a
// parser is made, for which it runs every rule once. One token ahead decides everywhere (grammar/lookahead.ts).
import path from "node:path";
import { build } from "esbuild";

/** In place of grammar/lookahead.ts: notes what chevrotain finds. */
const NOTING = `
  import { getLookaheadPaths, LLkLookaheadStrategy } from "chevrotain";
  import { EXPRESSION_TOKENS, RECORD_TOKENS } from "./tokens.ts";
  export const noted = [];
  class Noting extends LLkLookaheadStrategy {
    rules = {};
    constructor() {
      super({ maxLookahead: 1 });
      noted.push(this.rules);
    }
    note({ rule, prodOccurrence: occurrence, maxLookahead }, prodType, gated) {
      if (maxLookahead !== 1) throw new Error(rule.name + " looks further ahead than one token");
      const paths = getLookaheadPaths({ rule, occurrence, prodType, maxLookahead });
      const of = prodType === "Alternation" ? paths : paths.slice(0, 1);
      // A token that stands for a kind stands for all of that kind.
      const all = [...EXPRESSION_TOKENS, ...RECORD_TOKENS];
      const named = (index) => all.find(({ tokenTypeIdx }) => tokenTypeIdx === index).name;
      const names = (token) => [token.name, ...token.categoryMatches.map(named)];
      const choices = of.map((choice) =>
        choice.some((path) => path.length === 0)
          ? null
          : [...new Set(choice.flatMap(([token]) => names(token)))].join(" "),
      );
      (this.rules[rule.name] ??= []).push([prodType, occurrence, gated, choices]);
    }
    buildLookaheadForAlternation(options) {
      this.note(options, "Alternation", options.hasPredicates === true);
      return super.buildLookaheadForAlternation(options);
    }
    buildLookaheadForOptional(options) {
      this.note(options, options.prodType, false);
      return super.buildLookaheadForOptional(options);
    }
  }
  export const parserSettings = () => ({ maxLookahead: 1, skipValidations: true, lookaheadStrategy: new Noting() });
`;

/**
 * By the name of each rule its choices: of what kind, its number among those of its kind in the rule, whether gates are asked
 * too, and for each choice the names of the tokens that it can begin with, or null for one that can be empty.
 *
 * @typedef {[is: string, occurrence: number, gated: boolean, choices: (string | null)[]]} Choice
 * @param {string} root
 * @returns {Promise<Record<string, Choice[]>[]>} of each grammar
 */
export async function lookaheadTable(root) {
  const noting = {
    name: "noting",
    setup(bundling) {
      bundling.onLoad({ filter: /[\\/]grammar[\\/]lookahead\.ts$/ }, () => ({
        contents: NOTING,
        resolveDir: path.join(root, "grammar"),
      }));
    },
  };
  const { outputFiles } = await build({
    stdin: {
      contents: `
        import { ExpressionParser } from "./grammar/expression-parser.ts";
        import { noted } from "./grammar/lookahead.ts";
        import { StatementReader } from "./grammar/statement.ts";
        new ExpressionParser();
        new StatementReader();
        export const table = noted;`,
      resolveDir: root,
    },
    bundle: true,
    write: false,
    format: "esm",
    logLevel: "warning",
    plugins: [noting],
  });
  const code = Buffer.from(outputFiles[0].contents).toString("base64");
  const { table } = await import(`data:text/javascript;base64,${code}`);
  return table;
}
