/**
 * The tokens of values and expressions. Two lexers share them: in records a sign belongs to its number and a tight
 * fraction is one number; in expressions `+ - * / ^` are operators and a fraction exists only before a length or a
 * thread series.
 *
 * What a word means depends on what stands before it: behind a number, `min`, `in` and `m` are units. The patterns
 * of units and strings therefore look back at the token before.
 */
import type { CustomPatternMatcherReturn, ILexingResult, IToken, TokenType } from "chevrotain";
import { createToken, Lexer } from "chevrotain";
import { NEVER_UNITS } from "./vocabulary/words.ts";

const SPACE = "[ \\t\\r\\n\\v\\f\\u00a0\\u202f\\u2000-\\u200a]";

export const WhiteSpace = createToken({
  name: "WhiteSpace",
  pattern: new RegExp(`${SPACE}+`),
  group: Lexer.SKIPPED,
  line_breaks: true,
});

/** A string closed on its line. */
export const Text = createToken({
  name: "Text",
  pattern: { exec: (text, at, before) => quoted(CLOSED, text, at, before) },
  start_chars_hint: ['"'],
  line_breaks: false,
});
/** A string that its line ended. */
export const OpenText = createToken({
  name: "OpenText",
  pattern: { exec: (text, at, before) => quoted(OPEN, text, at, before) },
  start_chars_hint: ['"'],
  line_breaks: false,
});

const CLOSED = /"(?:[^"\\\r\n]|\\.)*"/y;
const OPEN = /"(?:[^"\\\r\n]|\\.)*\\?/y;

/** A quote tight behind a number is an inch mark and opens no string. */
function quoted(
  pattern: RegExp,
  text: string,
  at: number,
  before: IToken[],
): CustomPatternMatcherReturn | null {
  const last = before.at(-1);
  if (last !== undefined && last.startOffset + last.image.length === at && isNumber(last)) return null;
  return matchAt(pattern, text, at);
}

function matchAt(pattern: RegExp, text: string, at: number): CustomPatternMatcherReturn | null {
  pattern.lastIndex = at;
  return pattern.exec(text) as CustomPatternMatcherReturn | null;
}

export const DateText = createToken({ name: "DateText", pattern: /\d{4}-\d{2}-\d{2}(?![\w-]|\.\d)/ });
/** Something that means to be a date in another form. */
export const OtherDate = createToken({
  name: "OtherDate",
  pattern: /\d{4}[-/.]\d{1,2}[-/.]\d{1,2}(?!\d)|\d{1,2}[-/.]\d{1,2}[-/.]\d{4}(?!\d)/,
});

const LENGTH = "(?:\\d+-\\d+/\\d+|\\d+/\\d+|\\d+(?:\\.\\d+)?)";
const TIMES = `${SPACE}*[x×]${SPACE}*`;
const SERIES = "(?:UNC|UNF|UNEF|UNS|BSF|BSW|BSC|BSP|BA)(?![A-Za-z0-9_])";
const METRIC_THREAD = `M\\d+(?:\\.\\d+)?(?![A-Za-z_.]*[A-WYZa-wyz_])(?:${TIMES}\\d+(?:\\.\\d+)?(?:${SPACE}*mm(?![A-Za-z0-9_]))?){0,2}(?![\\w])`;
const INCH_THREAD = `(?:#\\d+|${LENGTH})(?:-\\d+)?${SPACE}*${SERIES}(?:${TIMES}${LENGTH}${SPACE}*(?:in|mm)(?![A-Za-z0-9_]))?`;

/** A thread, with a bolt's length and `LH` behind it. */
export const Thread = createToken({
  name: "Thread",
  pattern: new RegExp(`(?:${METRIC_THREAD}|${INCH_THREAD})(?:${SPACE}+LH(?![A-Za-z0-9_]))?`),
  line_breaks: false,
});

export const Range = createToken({ name: "Range", pattern: ".." });
export const PlusMinus = createToken({ name: "PlusMinus", pattern: /±|\+\/?-/ });
/** `+0.05/-0.00` behind a nominal value. */
export const Deviations = createToken({
  name: "Deviations",
  pattern: /[+-]\d+(?:\.\d+)?\s*\/\s*[+-]\d+(?:\.\d+)?/,
});

export const Mixed = createToken({ name: "Mixed", pattern: /-?\d+-\d+\/\d+/ });
export const SpacedMixed = createToken({
  name: "SpacedMixed",
  pattern: /-?\d+ \d+\/\d+(?=\s*(?:in|ft)(?![A-Za-z0-9_]))/,
});
export const Fraction = createToken({ name: "Fraction", pattern: /[+-]?\d+\/\d+/ });
/** `9,12`: a decimal comma, where neither side has a point. */
export const DecimalComma = createToken({ name: "DecimalComma", pattern: /[+-]?\d+,\d+(?![\d]*\.\d)(?!\d)/ });
export const Decimal = createToken({ name: "Decimal", pattern: /[+-]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?/ });
/** `.5`: a number without its leading nought. */
export const BareFraction = createToken({ name: "BareFraction", pattern: /[+-]?\.\d+/ });

export const UnsignedDecimal = createToken({
  name: "UnsignedDecimal",
  pattern: /\d+(?:\.\d+)?(?:[eE][+-]?\d+(?![\w.]))?/,
});
const EXPRESSION_FRACTION = /(?:\d+[- ]\d+\/\d+|\d+\/\d+)(?=\s*(?:in|ft)(?![A-Za-z0-9_]))/y;
export const ExpressionFraction = createToken({
  name: "ExpressionFraction",
  pattern: {
    exec: (text, at) =>
      at === 0 || /[\s(,=]/.test(text[at - 1] ?? "") ? matchAt(EXPRESSION_FRACTION, text, at) : null,
  },
  start_chars_hint: [..."0123456789"],
  line_breaks: false,
});

const NUMBERS: ReadonlySet<TokenType> = new Set([
  Mixed,
  SpacedMixed,
  Fraction,
  Deviations,
  DecimalComma,
  Decimal,
  BareFraction,
  UnsignedDecimal,
  ExpressionFraction,
]);

export function isNumber(token: IToken): boolean {
  return NUMBERS.has(token.tokenType);
}

const ATOM = "(?:°[CF]?|%|'|[A-Za-zµμΩ]+(?:_[A-Za-z]+)?(?:\\^?-?[0-9]+)?)";
const UNIT = new RegExp(`${ATOM}(?:[.·/]${ATOM})*`, "y");
const FIRST_WORD = /^[A-Za-z_]+/;

/**
 * A unit: the word behind a number, unless it is a word of the notation; in an expression also what stands behind
 * the `in` of a conversion.
 */
const UNIT_STARTS = [..."°%'µμΩABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"];
export const Unit = createToken({
  name: "Unit",
  pattern: { exec: (text, at, before) => unitBehind(before.at(-1), text, at) },
  start_chars_hint: UNIT_STARTS,
  line_breaks: false,
});
/** A `"` tight behind a number: inches, written in a way that is not read. */
export const InchMark = createToken({ name: "InchMark", pattern: /"/ });

function unitBehind(last: IToken | undefined, text: string, at: number): CustomPatternMatcherReturn | null {
  if (last === undefined) return null;
  const converts = last.tokenType === ConvertTo;
  if (!converts && !isNumber(last)) return null;
  const match = matchAt(UNIT, text, at);
  const word = match === null ? undefined : FIRST_WORD.exec(match[0])?.[0];
  return word !== undefined && !converts && NEVER_UNITS.has(word) ? null : match;
}

/** A bare word: every keyword is one too, so that a characteristic may be called `head` or `thread`. */
export const Word = createToken({ name: "Word", pattern: Lexer.NA });

function keyword(name: string, word: string): TokenType {
  return createToken({ name, pattern: new RegExp(`${word}(?![A-Za-z0-9_.])`), categories: [Word] });
}

export const After = keyword("After", "after");
export const At = keyword("At", "at");
export const Awg = keyword("Awg", "AWG");
export const By = keyword("By", "by");
export const Class = keyword("Class", "class");
export const Every = keyword("Every", "every");
export const Each = keyword("Each", "each");
export const Fitted = keyword("Fitted", "fitted");
export const From = keyword("From", "from");
export const Grade = keyword("Grade", "grade");
export const Hand = keyword("Hand", "hand");
export const Head = keyword("Head", "head");
export const Height = keyword("Height", "height");
export const In = keyword("In", "in");
export const Made = keyword("Made", "made");
export const Maximum = keyword("Maximum", "max");
export const Minimum = keyword("Minimum", "min");
export const New = keyword("New", "new");
export const NutFactor = keyword("NutFactor", "nut_factor");
export const Ran = keyword("Ran", "ran");
export const Running = keyword("Running", "running");
export const Slot = keyword("Slot", "slot");
export const Tapped = keyword("Tapped", "tapped");
export const Then = keyword("Then", "then");
export const ThreadWord = keyword("ThreadWord", "thread");
export const To = keyword("To", "to");
/** `x` or `×` between a count and what is counted. */
export const Cross = createToken({ name: "Cross", pattern: /x(?![A-Za-z0-9_.])|×/, categories: [Word] });

const KEYWORDS: TokenType[] = [
  After,
  At,
  Awg,
  By,
  Class,
  Every,
  Each,
  Fitted,
  From,
  Grade,
  Hand,
  Head,
  Height,
  In,
  Made,
  Maximum,
  Minimum,
  New,
  NutFactor,
  Ran,
  Running,
  Slot,
  Tapped,
  Then,
  ThreadWord,
  To,
  Cross,
];

/** A word or a path, with `*` and `{a, b}` as segments. */
export const Path = createToken({
  name: "Path",
  categories: [Word],
  pattern: /(?:[A-Za-z][A-Za-z0-9_]*|\*|\{[^{}"]*\})(?:\.(?:[A-Za-z][A-Za-z0-9_]*|\*|\{[^{}"]*\}))*/,
  line_breaks: true,
});
export const Comma = createToken({ name: "Comma", pattern: "," });
export const Equals = createToken({ name: "Equals", pattern: "=" });

/** The `in` of a conversion. */
export const ConvertTo = createToken({ name: "ConvertTo", pattern: /in(?![A-Za-z0-9_.])/ });
export const Name = createToken({
  name: "Name",
  pattern: /[A-Za-z][A-Za-z0-9_]*(?:\.[A-Za-z][A-Za-z0-9_]*)*/,
});
export const Open = createToken({ name: "Open", pattern: "(" });
export const Close = createToken({ name: "Close", pattern: ")" });
export const Plus = createToken({ name: "Plus", pattern: "+" });
export const Minus = createToken({ name: "Minus", pattern: /[-−]/ });
export const Times = createToken({ name: "Times", pattern: /[*×·]/ });
export const Divide = createToken({ name: "Divide", pattern: "/" });
export const Power = createToken({ name: "Power", pattern: "^" });

/** What no other token reads: no pattern of its own, but made from the lexer's errors, so that nothing of a line is lost. */
export const Unreadable = createToken({ name: "Unreadable", pattern: Lexer.NA });

/** The definitions are checked by a test, not at every start. */
const settings = {
  positionTracking: "onlyOffset",
  ensureOptimizations: true,
  skipValidations: true,
} as const;

export const RECORD_TOKENS: TokenType[] = [
  WhiteSpace,
  Text,
  OpenText,
  DateText,
  OtherDate,
  Thread,
  Unit,
  InchMark,
  Range,
  Deviations,
  PlusMinus,
  Mixed,
  SpacedMixed,
  Fraction,
  DecimalComma,
  Decimal,
  BareFraction,
  ...KEYWORDS,
  Path,
  Comma,
  Equals,
  Word,
  Unreadable,
];

export const EXPRESSION_TOKENS: TokenType[] = [
  WhiteSpace,
  Text,
  OpenText,
  Thread,
  ExpressionFraction,
  Unit,
  UnsignedDecimal,
  ConvertTo,
  Name,
  Comma,
  Open,
  Close,
  Plus,
  Minus,
  Times,
  Divide,
  Power,
  Equals,
  Unreadable,
];

const recordLexer = new Lexer(RECORD_TOKENS, settings);
const expressionLexer = new Lexer(EXPRESSION_TOKENS, settings);

export function recordTokens(text: string): IToken[] {
  return withErrors(recordLexer.tokenize(text), text);
}

export function expressionTokens(text: string): IToken[] {
  return withErrors(expressionLexer.tokenize(text), text);
}

function withErrors({ tokens, errors }: ILexingResult, text: string): IToken[] {
  if (errors.length === 0) return tokens;
  const unreadable = errors.map(
    ({ offset, length }): IToken => ({
      image: text.slice(offset, offset + length),
      startOffset: offset,
      tokenType: Unreadable,
      tokenTypeIdx: Unreadable.tokenTypeIdx as number,
    }),
  );
  return [...tokens, ...unreadable].sort((a, b) => a.startOffset - b.startOffset);
}
