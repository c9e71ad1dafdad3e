/**
 * The TextMate grammar for editors, made from the vocabulary, so that a new word is coloured without further work. It
 * sees one line at a time and no names: what it colours is what the form of a line shows. Its scopes are those that
 * colour themes know.
 */
import { UNIT_WORD } from "./tokens.ts";
import type { Shape } from "./vocabulary/shape.ts";
import { vocabulary } from "./vocabulary/vocabulary.ts";
import { NEVER_UNITS } from "./vocabulary/words.ts";

/** A rule of the TextMate format. */
export interface TextMateRule {
  readonly name?: string;
  readonly contentName?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly captures?: Readonly<Record<string, TextMateRule>>;
  readonly beginCaptures?: Readonly<Record<string, TextMateRule>>;
  readonly patterns?: readonly TextMateRule[];
  readonly include?: string;
}

export interface TextMateGrammar {
  readonly name: string;
  readonly scopeName: string;
  readonly comment: string;
  readonly patterns: readonly TextMateRule[];
  readonly repository: Readonly<Record<string, TextMateRule>>;
}

const SPACE = "[ \\t\\x{a0}\\x{202f}\\x{2000}-\\x{200a}]";
/** The end of a name: no letter, digit or dot goes on. */
const ENDS = "(?![A-Za-z0-9_.])";
const STARTS = "(?<![A-Za-z0-9_.])";
const NAME = "[A-Za-z][A-Za-z0-9_]*";
const COMMENT = `#(?=${SPACE}|$).*$`;
const COMMENT_BEHIND = `(?<=${SPACE}${SPACE}|\\t)${COMMENT}`;
const COMMENT_AHEAD = `(?:${SPACE}{2,}|\\t)#(?:${SPACE}|$)`;
/** A line that goes on with the record above it: indented, and of no other form. */
const CONTINUATION = `[ \\t]${SPACE}*(?!${SPACE}|[a-z][a-z_]*:(?:${SPACE}|$)|\\||#(?:${SPACE}|$)|$)`;

export function textMateGrammar(): TextMateGrammar {
  return {
    name: "Cotter",
    scopeName: "source.cotter",
    comment: "Generated from the vocabulary of the notation: change that, and run `npm run generate`.",
    patterns: [
      { include: "#comment" },
      { include: "#prose-by-bar" },
      { include: "#day" },
      { include: "#block" },
      { include: "#calc" },
      ...Object.keys(recordRules()).map((name) => ({ include: `#${name}` })),
      { include: "#misspelt-record" },
      { include: "#prose" },
      { include: "#stray" },
    ],
    repository: { ...LINES, ...VALUES },
  };
}

function anyOf(words: Iterable<string>): string {
  return [...new Set(words)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1)).join("|");
}

function scope(name: string): TextMateRule {
  return { name: `${name}.cotter` };
}

const blockWords = vocabulary.blocks.map(({ word }) => word).filter((word) => word !== "day");
const recordWords = vocabulary.records.map(({ word }) => word);

/** Records with the same words to choose from share a rule: elsewhere those words may be names. */
function recordRules(): Readonly<Record<string, TextMateRule>> {
  const groups = new Map<string, Set<string>>();
  for (const { word } of vocabulary.records.filter((entry) => entry.word !== "calc")) {
    const all = vocabulary.records.filter((entry) => entry.word === word);
    const choices = all
      .flatMap((entry) => [...entry.elements, ...entry.clauses])
      .flatMap(({ shape }) => choicesOf(shape));
    const key = anyOf(choices);
    groups.set(key, (groups.get(key) ?? new Set()).add(word));
  }
  return Object.fromEntries(
    [...groups].map(([choices, words], index) => [`record-${index}`, recordRule(words, choices)]),
  );
}

function choicesOf(shape: Shape | undefined): readonly string[] {
  if (shape?.value === "either") return shape.options.flatMap(choicesOf);
  return (shape?.value === "word" || shape?.value === "words") && "choices" in shape.of
    ? shape.of.choices
    : [];
}

function recordRule(words: Iterable<string>, choices: string): TextMateRule {
  const chosen = { match: `${STARTS}(?:${choices})${ENDS}`, ...scope("constant.language") };
  return {
    begin: `^([ \\t]${SPACE}*)(${anyOf(words)})(:)(?=${SPACE}|$)`,
    end: `$|^(?!${CONTINUATION})`,
    beginCaptures: {
      2: scope("keyword.other.record"),
      3: scope("punctuation.separator.key-value"),
    },
    ...scope("meta.record"),
    patterns: [{ include: "#continuation" }, ...(choices === "" ? [] : [chosen]), { include: "#values" }],
  };
}

const LINES: Readonly<Record<string, TextMateRule>> = {
  comment: { match: `^${SPACE}*${COMMENT}`, ...scope("comment.line.number-sign") },
  "prose-by-bar": {
    match: `^${SPACE}*(\\|).*$`,
    ...scope("markup.other.prose"),
    captures: { 1: scope("punctuation.definition.prose") },
  },
  day: {
    begin: '^(day)(?![A-Za-z0-9_])(?=[^A-Za-z0-9_"]*\\d)',
    end: "$",
    beginCaptures: { 1: scope("keyword.declaration.day") },
    ...scope("meta.header"),
    patterns: [
      { match: "\\d{4}-\\d{2}-\\d{2}", ...scope("entity.name.section.day") },
      { include: "#values" },
    ],
  },
  block: {
    begin: `^(${anyOf(blockWords)})(?:${SPACE}+([^\\s"]+)(?=${SPACE}*(?:"|like(?:\\s|$)|$)|${COMMENT_AHEAD})|(?=${SPACE}*"))`,
    end: "$",
    beginCaptures: {
      1: scope("keyword.declaration.block"),
      2: scope("entity.name.type"),
    },
    ...scope("meta.header"),
    patterns: [{ include: "#values" }],
  },
  calc: {
    begin: `^([ \\t]${SPACE}*)(calc)(:)(?=${SPACE}|$)${SPACE}*(${NAME})?`,
    end: `$|^(?!${CONTINUATION})`,
    beginCaptures: {
      2: scope("keyword.other.record"),
      3: scope("punctuation.separator.key-value"),
      4: scope("entity.name.variable"),
    },
    ...scope("meta.record"),
    patterns: [{ include: "#continuation" }, { include: "#expression" }],
  },
  ...recordRules(),
  // A comma at the end of a line holds its record open until the next line shows whether it goes on.
  continuation: {
    begin: `(,)(?=${SPACE}*$|${COMMENT_AHEAD})`,
    end: "^",
    beginCaptures: { 1: scope("punctuation.separator.list") },
    patterns: [{ include: "#comment-behind" }],
  },
  "misspelt-record": {
    match: `^[ \\t]${SPACE}*((?i:${anyOf(recordWords)})${SPACE}*:|[a-z][a-z_]*:(?=${SPACE}|$))(.*)$`,
    captures: { 1: scope("invalid.illegal.record"), 2: { patterns: [{ include: "#values" }] } },
    ...scope("meta.record"),
  },
  prose: { match: `^[ \\t]${SPACE}*\\S.*$`, ...scope("markup.other.prose") },
  stray: { match: "^\\S.*$", ...scope("invalid.illegal.line") },
};

const NUMBER =
  "(?:\\d+(?:-|[ ]+)\\d+/\\d+(?=\\s*(?:in|ft)(?![A-Za-z0-9_]))|\\d+/\\d+|\\d+(?:\\.\\d+)?(?:[eE][+-]?\\d+)?)";
const UNSIGNED = NUMBER.replace("|\\d+/\\d+|", "|(?<=[\\s(,=])\\d+/\\d+(?=\\s*(?:in|ft)(?![A-Za-z0-9_]))|");
const UNIT = `(?!(?:${anyOf(NEVER_UNITS)})${ENDS})${UNIT_WORD}(?:[.·/]${UNIT_WORD})*`;
const THREAD_SERIES = "UNC|UNF|UNEF|UNS|BSF|BSW|BSC|BSP|BA";
const THREAD =
  "M\\d+(?:\\.\\d+)?(?:\\s*[x×]\\s*\\d+(?:\\.\\d+)?){0,2}(?:\\s*mm)?(?![A-Za-z0-9_]|\\.[A-Za-z0-9_])|" +
  `(?:#\\d+|\\d+(?:-\\d+/\\d+|/\\d+)?)(?:-\\d+)?\\s*(?:${THREAD_SERIES})${ENDS}(?:\\s*[x×]\\s*[\\d/ -]+(?:in|mm)(?![A-Za-z0-9_]))?`;

/** Words that stand between values, of clauses and within values. */
const CLAUSE_WORDS = anyOf([
  ...vocabulary.records
    .flatMap(({ clauses }) => clauses.flatMap(({ words }) => words))
    .filter((word) => /^[a-z]/.test(word)),
  ..."like min max new then to from by after every running height head thread nut_factor in at each slot hand class ran".split(
    " ",
  ),
]);

const NUMBER_CAPTURES = { 1: scope("constant.numeric"), 2: scope("keyword.other.unit") };

const VALUES: Readonly<Record<string, TextMateRule>> = {
  "comment-behind": { match: COMMENT_BEHIND, ...scope("comment.line.number-sign") },
  string: {
    patterns: [
      {
        match: '(?<![0-9])(")(?:[^"\\\\]|\\\\.)*(")',
        ...scope("string.quoted.double"),
        captures: {
          0: { patterns: [{ match: '\\\\["\\\\]', ...scope("constant.character.escape") }] },
        },
      },
      { match: '(?<![0-9])".*$', ...scope("string.quoted.double invalid.illegal.unclosed-string") },
    ],
  },
  values: {
    patterns: [
      { include: "#comment-behind" },
      { include: "#string" },
      { match: "(?<![A-Za-z0-9_])\\d{4}-\\d{2}-\\d{2}(?![0-9A-Za-z_-])", ...scope("constant.numeric.date") },
      { match: `(?<![A-Za-z0-9_.])(?:${THREAD})(?:\\s+LH${ENDS})?`, ...scope("constant.other.thread") },
      {
        match: `${STARTS}(class|grade|AWG)\\s+([A-Z0-9][A-Za-z0-9.-]*|unknown)`,
        captures: { 1: scope("keyword.other.clause"), 2: scope("constant.numeric") },
      },
      { match: `(?<=\\d|\\d${SPACE})x(?=${SPACE}|M?\\d)|×`, ...scope("keyword.operator.count") },
      { match: `(?<![A-Za-z_])([-+\\x{2212}]?${NUMBER})(?:${SPACE}*(${UNIT}))?`, captures: NUMBER_CAPTURES },
      { match: "\\.\\.|±|\\+/?-|=", ...scope("keyword.operator") },
      { match: `${STARTS}(?:${CLAUSE_WORDS})${ENDS}`, ...scope("keyword.other.clause") },
      { include: "#path" },
      { match: ",", ...scope("punctuation.separator.list") },
    ],
  },
  path: {
    patterns: [
      {
        begin: "\\{",
        end: "\\}|$",
        ...scope("meta.set"),
        patterns: [
          { match: `(?:${NAME}|\\*)(?:\\.(?:${NAME}|\\*))*`, ...scope("variable.other.path") },
          { match: ",", ...scope("punctuation.separator.list") },
        ],
      },
      { match: `(?:${NAME}|\\*)(?:\\.(?:${NAME}|\\*))*`, ...scope("variable.other.path") },
    ],
  },
  expression: {
    patterns: [
      { include: "#comment-behind" },
      { include: "#string" },
      { match: `(?<=[\\s(,=])(?:${THREAD})(?:\\s+LH${ENDS})?`, ...scope("constant.other.thread") },
      {
        match: `${STARTS}(class|grade|AWG)\\s+([A-Z0-9][A-Za-z0-9.-]*|unknown)`,
        captures: { 1: scope("keyword.other.clause"), 2: scope("constant.numeric") },
      },
      { match: `(?<![A-Za-z_])(${UNSIGNED})(?:${SPACE}*(${UNIT}))?`, captures: NUMBER_CAPTURES },
      {
        match: `${STARTS}(in)${SPACE}+(${UNIT_WORD}(?:[.·/]${UNIT_WORD})*)`,
        captures: { 1: scope("keyword.operator.conversion"), 2: scope("keyword.other.unit") },
      },
      { match: `${STARTS}by(?=${SPACE}*")`, ...scope("keyword.other.clause") },
      { match: `${NAME}(?=${SPACE}*\\()`, ...scope("support.function") },
      { match: `${NAME}(?:\\.${NAME})*`, ...scope("variable.other.path") },
      { match: "[-+*/^=×·\\x{2212}]", ...scope("keyword.operator") },
      { match: ",", ...scope("punctuation.separator.list") },
    ],
  },
};
