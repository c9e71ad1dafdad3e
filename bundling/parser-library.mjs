// Of chevrotain the programs use the reading of tokens by rules. The rest is left out: its lexer (grammar/lexer.ts is our
// own), the analysis of a grammar, which is made when the programs are built (lookahead-table.mjs), and its check, which a test
// makes, recovery from errors and trees, which no parser of ours asks for (grammar/lookahead.ts), and the words of its
// refusals, which nobody sees: the shape reader says what was expected. Of its methods with a figure behind their name those stay
// that the rules of the grammar call.
import { readdir, readFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { lookaheadTable } from "./lookahead-table.mjs";

const refusing = (names) =>
  `const left = () => { throw new Error("left out of the programs") };\n${names.map((name) => `export const ${name} = left;`).join("\n")}`;

/** By their paths below `chevrotain/lib/src/`: what stands there instead. */
const INSTEAD = {
  "scan/lexer_public.js":
    "export const Lexer = { NA: /NOT_APPLICABLE/ }; export const LexerDefinitionErrorType = {};",
  "parse/grammar/checks.js": refusing(["validateRuleIsOverridden"]),
  "parse/grammar/lookahead.js": `${refusing(["getLookaheadPaths"])} export const PROD_TYPE = {};`,
  "parse/grammar/llk_lookahead.js": "export class LLkLookaheadStrategy {}",
  "parse/errors_public.js": `
    const none = () => "";
    export const defaultParserErrorProvider = { buildMismatchTokenMessage: none, buildNotAllInputParsedMessage: none };
    export const defaultGrammarResolverErrorProvider = {
      buildRuleNotFoundError: (from, to) => \`rule \${from.name} calls \${to.nonTerminalName}, which is not defined\`,
    };
    export const defaultGrammarValidatorErrorProvider = {};`,
  "parse/parser/parser.js": `
    import { toFastProperties } from "@chevrotain/utils";
    import { createTokenInstance, EOF } from "../../scan/tokens_public.js";
    import { ErrorHandler } from "./traits/error_handler.js";
    import { LexerAdapter } from "./traits/lexer_adapter.js";
    import { LooksAhead } from "./traits/looksahead.js";
    import { RecognizerApi } from "./traits/recognizer_api.js";
    import { RecognizerEngine } from "./traits/recognizer_engine.js";
    import { Recoverable } from "./traits/recoverable.js";
    import { TreeBuilder } from "./traits/tree_builder.js";
    import { applyMixins } from "./utils/apply_mixins.js";
    ${refusing(["CstParser", "EMPTY_ALT"])}
    export const ParserDefinitionErrorType = {};
    export const END_OF_FILE = Object.freeze(createTokenInstance(EOF, "", NaN, NaN, NaN, NaN, NaN, NaN));
    export const DEFAULT_RULE_CONFIG = Object.freeze({ recoveryValueFunc: () => undefined, resyncEnabled: true });
    export class EmbeddedActionsParser {
      constructor(tokens, given) {
        const settings = { ...given, outputCst: false };
        this.definitionErrors = [];
        this.selfAnalysisDone = false;
        this.RECORDING_PHASE = false;
        this.initErrorHandler(settings);
        this.initLexerAdapter();
        this.initLooksAhead(settings);
        this.initRecognizerEngine(tokens, settings);
        this.initRecoverable(settings);
        this.initTreeBuilder(settings);
      }
      performSelfAnalysis() {
        // Rules have been set by their names, after which the engine would look each property up.
        toFastProperties(this);
        this.selfAnalysisDone = true;
        this.useLookaheadTable();
      }
    }
    applyMixins(EmbeddedActionsParser, [
      Recoverable, LooksAhead, TreeBuilder, LexerAdapter, RecognizerEngine, RecognizerApi, ErrorHandler,
    ]);`,
  "parse/parser/traits/looksahead.js": `
    import { table } from "lookahead table";
    import { getKeyForAutomaticLookahead, MANY_IDX, MANY_SEP_IDX, OPTION_IDX, OR_IDX } from "../../grammar/keys.js";
    const KINDS = { Alternation: OR_IDX, Option: OPTION_IDX, Repetition: MANY_IDX, RepetitionWithSeparator: MANY_SEP_IDX };
    export class LooksAhead {
      initLooksAhead({ maxLookahead }) {
        if (maxLookahead !== 1) throw new Error("the programs look one token ahead");
        this.maxLookahead = maxLookahead;
        /** What is known of each choice by its key, and once it has been met, how it is made. */
        this.choices = new Map();
      }
      useLookaheadTable() {
        const rules = table.find((grammar) => Object.keys(grammar).every((name) => name in this.fullRuleNameToShort));
        if (rules === undefined) throw new Error("a grammar has other rules than when the programs were built");
        for (const [name, choices] of Object.entries(rules))
          for (const choice of choices)
            this.choices.set(getKeyForAutomaticLookahead(this.fullRuleNameToShort[name], KINDS[choice[0]], choice[1]), choice);
      }
      getKeyForAutomaticLookahead(kind, occurrence) {
        return getKeyForAutomaticLookahead(this.currRuleShortName, kind, occurrence);
      }
      getLaFuncFromCache(key) {
        const known = this.choices.get(key);
        if (typeof known === "function") return known;
        const made = this.lookaheadOf(known);
        this.choices.set(key, made);
        return made;
      }
      lookaheadOf([kind, , gated, choices]) {
        const begins = choices.map((names) =>
          names === null ? undefined : new Set(names.split(" ").map((name) => this.tokensMap[name].tokenTypeIdx)),
        );
        const [first] = begins;
        if (kind !== "Alternation")
          return function () { return first === undefined || first.has(this.LA_FAST(1).tokenTypeIdx); };
        return function (alternatives) {
          const next = this.LA_FAST(1).tokenTypeIdx;
          for (let index = 0; index < begins.length; index++) {
            if (gated && alternatives[index].GATE?.call(this) === false) continue;
            if (begins[index] === undefined || begins[index].has(next)) return index;
          }
          return undefined;
        };
      }
    }`,
  "parse/parser/traits/recoverable.js": `
    export const IN_RULE_RECOVERY_EXCEPTION = "InRuleRecoveryException";
    export class Recoverable {
      initRecoverable({ recoveryEnabled }) {
        if (recoveryEnabled !== false) throw new Error("recovery is left out of the programs");
        this.recoveryEnabled = false;
      }
      attemptInRepetitionRecovery() {}
    }`,
  "parse/parser/traits/tree_builder.js": `
    export class TreeBuilder {
      initTreeBuilder({ outputCst }) {
        if (outputCst !== false) throw new Error("trees are left out of the programs");
        this.outputCst = false;
        this.CST_STACK = [];
      }
      cstInvocationStateUpdate() {}
      cstFinallyStateUpdate() {}
      cstPostTerminal() {}
      cstPostNonTerminal() {}
      cstPostRule() {}
    }`,
  "parse/parser/traits/error_handler.js": `
    import { defaultParserErrorProvider } from "../../errors_public.js";
    import { EarlyExitException, isRecognitionException, NoViableAltException } from "../../exceptions_public.js";
    export class ErrorHandler {
      initErrorHandler() {
        this.errors = [];
        this.errorMessageProvider = defaultParserErrorProvider;
      }
      SAVE_ERROR(error) {
        if (!isRecognitionException(error)) throw new Error("not a refusal of the grammar", { cause: error });
        this.errors.push(error);
        return error;
      }
      raiseEarlyExitException() {
        throw this.SAVE_ERROR(new EarlyExitException("", this.LA(1), this.LA(0)));
      }
      raiseNoAltException() {
        throw this.SAVE_ERROR(new NoViableAltException("", this.LA(1), this.LA(0)));
      }
    }`,
};

/** What is imported only for what is left out above: recovery, and a grammar as data. */
const NOT_NEEDED = {
  "parse/parser/traits/recognizer_engine.js":
    /import \{ (NextTerminal[^}]*?),? \} from "\.\.\/\.\.\/grammar\/interpreter\.js";/,
  "parse/parser/traits/recognizer_api.js": /import \{ (serializeGrammar) \} from "@chevrotain\/gast";/,
};

/** Methods that a rule may call, each under ten names, of which the grammar calls some, and what these are made of. */
const CALLED_BY_RULES = {
  "parse/parser/traits/recognizer_api.js": /^/,
  "parse/parser/traits/recognizer_engine.js": /^atLeastOne/,
};

/** Without the methods of one of these classes that no rule of the grammar calls. */
function withoutUncalled(text, file, uncalled, called) {
  const method = /^ {4}(\w+)\([^)]*\) \{\n[\s\S]*?^ {4}\}\n/gm;
  if ([...text.matchAll(method)].length < 30) throw new Error(`${file} is written otherwise than expected`);
  return text.replace(method, (whole, name) => (uncalled.test(name) && !called.has(name) ? "" : whole));
}

/** What the rules of the grammar call of a parser. */
async function calledIn(grammar) {
  const files = (await readdir(grammar)).filter((file) => file.endsWith(".ts"));
  const texts = await Promise.all(files.map((file) => readFile(path.join(grammar, file), "utf8")));
  return new Set(texts.flatMap((text) => [...text.matchAll(/\bthis\.(\w+)/g)].map(([, name]) => name)));
}

const LODASH = fileURLToPath(new URL("lodash.mjs", import.meta.url));

/** @param root the folder of the grammar's folder */
export const leanParserLibrary = (root) => ({
  name: "lean parser library",
  setup(bundling) {
    bundling.onResolve({ filter: /^lodash-es$/ }, () => ({ path: LODASH, sideEffects: false }));
    bundling.onResolve({ filter: /^lookahead table$/ }, ({ path: name }) => ({
      path: name,
      namespace: "of the grammar",
    }));
    bundling.onLoad({ filter: /./, namespace: "of the grammar" }, async () => ({
      contents: `export const table = ${JSON.stringify(await lookaheadTable(root))};`,
    }));
    bundling.onLoad({ filter: /[\\/]chevrotain[\\/]lib[\\/]src[\\/].*\.js$/ }, async ({ path: file }) => {
      const within = file.replaceAll(path.sep, "/").replace(/^.*\/chevrotain\/lib\/src\//, "");
      if (INSTEAD[within] !== undefined) return { contents: INSTEAD[within], loader: "js" };
      const notNeeded = NOT_NEEDED[within];
      if (notNeeded === undefined) return undefined;
      const text = await readFile(file, "utf8");
      if (!notNeeded.test(text)) throw new Error(`${file} imports otherwise what is not needed of it`);
      const needed = text.replace(notNeeded, (_, names) => `let ${names};`);
      const called = await calledIn(path.join(root, "grammar"));
      return { contents: withoutUncalled(needed, file, CALLED_BY_RULES[within], called), loader: "js" };
    });
  },
});
