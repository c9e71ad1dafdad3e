// Of chevrotain the programs use the reading of tokens by rules. The rest is left out: its lexer (grammar/lexer.ts is our
// own), the check of a grammar (a test makes it), recovery from errors and trees, which no parser of ours asks for
// (grammar/lookahead.ts), and the words of its refusals, which nobody sees: the shape reader says what was expected.
import { readFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";

const refusing = (names) =>
  `const left = () => { throw new Error("left out of the programs") };\n${names.map((name) => `export const ${name} = left;`).join("\n")}`;

/** By their paths below `chevrotain/lib/src/`: what stands there instead. */
const INSTEAD = {
  "scan/lexer_public.js":
    "export const Lexer = { NA: /NOT_APPLICABLE/ }; export const LexerDefinitionErrorType = {};",
  "parse/grammar/checks.js": refusing([
    "validateAmbiguousAlternationAlternatives",
    "validateEmptyOrAlternative",
    "validateGrammar",
    "validateLookahead",
    "validateNoLeftRecursion",
    "validateRuleIsOverridden",
    "validateSomeNonEmptyLookaheadPath",
  ]),
  "parse/errors_public.js": `
    const none = () => "";
    export const defaultParserErrorProvider = { buildMismatchTokenMessage: none, buildNotAllInputParsedMessage: none };
    export const defaultGrammarResolverErrorProvider = {
      buildRuleNotFoundError: (from, to) => \`rule \${from.name} calls \${to.nonTerminalName}, which is not defined\`,
    };
    export const defaultGrammarValidatorErrorProvider = {};`,
  "parse/grammar/follow.js": refusing(["computeAllProdsFollows"]),
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
  "parse/parser/traits/context_assist.js": "export class ContentAssist { initContentAssist() {} }",
  "parse/parser/traits/perf_tracer.js":
    "export class PerformanceTracer { initPerformanceTracer() {} TRACE_INIT(what, make) { return make(); } }",
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

/** What recovery would walk through stands beside what is used. */
const WALKERS = /import \{ (NextTerminal[^}]*?),? \} from "\.\.\/\.\.\/grammar\/interpreter\.js";/;

const LODASH = fileURLToPath(new URL("lodash.mjs", import.meta.url));

export const leanParserLibrary = {
  name: "lean parser library",
  setup(bundling) {
    bundling.onResolve({ filter: /^lodash-es$/ }, () => ({ path: LODASH, sideEffects: false }));
    bundling.onLoad({ filter: /[\\/]chevrotain[\\/]lib[\\/]src[\\/].*\.js$/ }, async ({ path: file }) => {
      const within = file.replaceAll(path.sep, "/").replace(/^.*\/chevrotain\/lib\/src\//, "");
      if (INSTEAD[within] !== undefined) return { contents: INSTEAD[within], loader: "js" };
      if (within !== "parse/parser/traits/recognizer_engine.js") return undefined;
      const text = await readFile(file, "utf8");
      if (!WALKERS.test(text)) throw new Error(`${file} imports its walkers otherwise`);
      return { contents: text.replace(WALKERS, (_, names) => `let ${names};`), loader: "js" };
    });
  },
};
