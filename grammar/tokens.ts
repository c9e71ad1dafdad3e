/**
 * The tokens of values and expressions. Two lexers share them: in records a sign belongs to its number and a tight
 * fraction is one number; in expressions `+ - * / ^` are operators and a fraction exists only before a length or a
 * thread series.
 */
import type { IToken, TokenType } from "chevrotain";
import { createToken, Lexer } from "chevrotain";
import type { LexerRule } from "./lexer.ts";
import { byPattern, TokenReader } from "./lexer.ts";
import { opensString } from "./lines.ts";
import { UNIT_SYMBOLS } from "./vocabulary/units.ts";
import { NEVER_UNITS } from "./vocabulary/words.ts";
import { SPACE_CLASS as SPACE } from "./white-space.ts";

const DIGITS = "0123456789";
const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz";
/** A sign belongs to its number; the minus of typesetters is read as well. */
const SIGNS = "-+\u2212";
const SIGN = `[${SIGNS}]`;

function tokenType(name: string, ...categories: TokenType[]): TokenType {
  return createToken({ name, pattern: Lexer.NA, categories });
}

/** A string closed on its line. */
export const Text = tokenType("Text");
/** A string that its line ended. */
export const OpenText = tokenType("OpenText");
/** A `"` tight behind a number: inches, written in a way that is not read. */
export const InchMark = tokenType("InchMark");
export const DateText = tokenType("DateText");
/** Something that means to be a date in another form: other parts or signs, or a time of day behind. */
export const OtherDate = tokenType("OtherDate");
/** A thread, with `LH` and a bolt's length behind it. */
export const Thread = tokenType("Thread");
/** `..` between two bounds. */
export const Range = tokenType("Range");
export const PlusMinus = tokenType("PlusMinus");
/** `+0.05/-0.00` behind a nominal value; a nought needs no sign. */
export const Deviations = tokenType("Deviations");
/** `1-3/8`, or `1 3/8` before an inch or a foot. */
export const Mixed = tokenType("Mixed");
export const Fraction = tokenType("Fraction");
/** `9,12` or `1,250,000`: a comma in a number, where neither side has a point. */
export const DecimalComma = tokenType("DecimalComma");
export const Decimal = tokenType("Decimal");
/** `.5`: a number without its leading nought. */
export const BareFraction = tokenType("BareFraction");
/** A number of an expression, where a sign is an operator. */
export const UnsignedDecimal = tokenType("UnsignedDecimal");
export const ExpressionFraction = tokenType("ExpressionFraction");
/** A unit: the word behind a number, unless it is a word of the notation; or behind the `in` of a conversion. */
export const Unit = tokenType("Unit");
/** A bare word: every keyword is one too, so that a characteristic may be called `head` or `thread`. */
export const Word = tokenType("Word");
/** A word or a path, with `*` and `{a, b}` as segments. */
export const Path = tokenType("Path", Word);
/** `x` or `×` between a count and what is counted. */
export const Cross = tokenType("Cross", Word);
export const Comma = tokenType("Comma");
export const Equals = tokenType("Equals");
/** The `in` of a conversion. */
export const ConvertTo = tokenType("ConvertTo");
/** A name or path in an expression. */
export const Name = tokenType("Name");
export const Open = tokenType("Open");
export const Close = tokenType("Close");
export const Plus = tokenType("Plus");
export const Minus = tokenType("Minus");
export const Times = tokenType("Times");
export const Divide = tokenType("Divide");
export const Power = tokenType("Power");
/** What no other token reads. */
export const Unreadable = tokenType("Unreadable");

const keywords = new Map<string, TokenType>([["x", Cross]]);
/** The types of the words that values are built with, by their text. */
export const KEYWORDS: ReadonlyMap<string, TokenType> = keywords;

function keyword(name: string, word: string): TokenType {
  const type = tokenType(name, Word);
  keywords.set(word, type);
  return type;
}

export const After = keyword("After", "after");
export const At = keyword("At", "at");
export const Awg = keyword("Awg", "AWG");
export const By = keyword("By", "by");
export const Class = keyword("Class", "class");
export const Each = keyword("Each", "each");
export const Every = keyword("Every", "every");
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

const NUMBERS: ReadonlySet<TokenType> = new Set([
  Mixed,
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

/** Not tight behind a number, where a quotation mark means inches. */
function notBehindNumber(rule: LexerRule): LexerRule {
  return {
    ...rule,
    endOf: (text, at, before) => (opensString(text, at) ? rule.endOf(text, at, before) : at),
  };
}

const STRINGS: readonly LexerRule[] = [
  notBehindNumber(byPattern(Text, '"', /"[^"\\]*(?:\\[\s\S][^"\\]*)*"/y)),
  notBehindNumber(byPattern(OpenText, '"', /"[\s\S]*/y)),
  byPattern(InchMark, '"', /"/y),
];

const TIMES = `${SPACE}*[x×]${SPACE}*`;
const FIGURES = "\\d+(?:\\.\\d+)?";
const INCHES = `(?:\\d+-\\d+/\\d+|\\d+/\\d+|${FIGURES})`;
const SERIES = "(?:UNC|UNF|UNEF|UNS|BSF|BSW|BSC|BSP|BA)(?![\\w.])";
const LEFT_HAND = `(?:${SPACE}+LH(?!\\w))?`;
const METRIC_LENGTH = `(?:${LEFT_HAND}${TIMES}${FIGURES})?(?:${SPACE}*mm(?!\\w))?`;
const METRIC_THREAD = `M${FIGURES}${LEFT_HAND}(?:${TIMES}${FIGURES}${METRIC_LENGTH})?(?!\\w|\\.\\w)${LEFT_HAND}`;
const INCH_LENGTH = `(?:${TIMES}(?:\\d+${SPACE}+\\d+/\\d+|${INCHES})${SPACE}*(?:in|mm)(?!\\w))?`;
const INCH_THREAD = `(?:#\\d+|${INCHES})(?:-\\d+)?${SPACE}*${SERIES}${LEFT_HAND}${INCH_LENGTH}${LEFT_HAND}`;
const BEFORE_LENGTH = `(?=${SPACE}*(?:in|ft)(?!\\w))`;

const METRIC: LexerRule = byPattern(Thread, "M", new RegExp(METRIC_THREAD, "y"));
const INCH: LexerRule = byPattern(Thread, `#${DIGITS}`, new RegExp(INCH_THREAD, "y"));

const DATES: readonly LexerRule[] = [
  byPattern(DateText, DIGITS, /\d{4}-\d{2}-\d{2}(?![\w-]|\.\d|\+\d\d:)/y),
  byPattern(
    OtherDate,
    DIGITS,
    /(?:\d{4}([-/.])\d{1,2}\1\d{1,2}|\d{1,2}([-/.])\d{1,2}\2(?:\d{4}|\d{2}))(?!\d)(?:T[\d:.]*)?(?:Z|[+-]\d\d:?\d\d)?/y,
  ),
];

const SIGNED_DEVIATIONS = `${SIGN}${FIGURES}${SPACE}*/${SPACE}*(?:${SIGN}${FIGURES}|0(?:\\.0+)?(?![\\d.]))`;
const DEVIATIONS = `(?:${SIGNED_DEVIATIONS}|0(?:\\.0+)?${SPACE}*/${SPACE}*${SIGN}${FIGURES})`;
const NUMBER_STARTS = DIGITS + SIGNS;

const RECORD_NUMBERS: readonly LexerRule[] = [
  byPattern(Range, ".", /\.\./y),
  byPattern(Deviations, NUMBER_STARTS, new RegExp(DEVIATIONS, "y")),
  byPattern(PlusMinus, "±+", /±|\+\/?-/y),
  byPattern(Mixed, NUMBER_STARTS, new RegExp(`${SIGN}?\\d+-\\d+/\\d+`, "y")),
  byPattern(Mixed, NUMBER_STARTS, new RegExp(`${SIGN}?\\d+${SPACE}+\\d+/\\d+${BEFORE_LENGTH}`, "y")),
  byPattern(Fraction, NUMBER_STARTS, new RegExp(`${SIGN}?\\d+/\\d+`, "y")),
  byPattern(
    DecimalComma,
    NUMBER_STARTS,
    new RegExp(`${SIGN}?\\d+(?:(?:,\\d{3}){2,}(?![\\d,])|,\\d+(?!\\d|\\.\\d))`, "y"),
  ),
  byPattern(Decimal, NUMBER_STARTS, new RegExp(`${SIGN}?${FIGURES}(?:[eE][+-]?\\d+)?`, "y")),
  byPattern(BareFraction, `.${SIGNS}`, new RegExp(`${SIGN}?\\.\\d+`, "y")),
];

const EXPRESSION_FRACTION = new RegExp(`(?:\\d+(?:-|${SPACE}+)\\d+/\\d+|\\d+/\\d+)${BEFORE_LENGTH}`, "y");

/** Behind a space, `(`, `,` or `=`, or at the start. */
function onlyApart(rule: LexerRule): LexerRule {
  const apart = new RegExp(`${SPACE}|[(,=]`);
  return {
    ...rule,
    endOf: (text, at, before) =>
      at === 0 || apart.test(text.charAt(at - 1)) ? rule.endOf(text, at, before) : at,
  };
}

/**
 * One unit of a unit expression, as a pattern. A power that no unit takes is read with its unit, so that `5 mm^-2`
 * is never 5 mm to a power.
 */
export const UNIT_WORD = "(?:°[CF]?|%|'|[A-Za-zµμΩ][A-Za-zµμΩ_]*(?:\\^-?\\d+|\\d+|[²³⁴])?)";
const JOINED_UNIT = new RegExp(`[.·/](${UNIT_WORD})`, "y");
const FIRST_UNIT = new RegExp(UNIT_WORD, "y");
/** No unit has a figure in its symbol. */
const POWER_BEHIND = /[\^\d²³⁴].*/;
const VALUES_IN_WORDS: ReadonlySet<string> = new Set(["class", "grade", "AWG"]);

/** In records whatever is joined to a unit belongs to it; in expressions only what is a unit too. */
function unitRule(joins: (word: string) => boolean): LexerRule {
  return {
    type: Unit,
    starts: `${LETTERS}°%'µμΩ`,
    endOf: (text, at, before) => (unitMayFollow(text, at, before) ? unitEnd(text, at, joins) : at),
  };
}

function unitMayFollow(text: string, at: number, before: readonly IToken[]): boolean {
  const last = before.at(-1);
  if (last?.tokenType === ConvertTo) return true;
  if (last === undefined || !isNumber(last) || VALUES_IN_WORDS.has(before.at(-2)?.image ?? "")) return false;
  WORD.lastIndex = at;
  return !NEVER_UNITS.has(WORD.exec(text)?.[0] ?? "");
}

const WORD = /[A-Za-z_]*/y;

function unitEnd(text: string, at: number, joins: (word: string) => boolean): number {
  FIRST_UNIT.lastIndex = at;
  if (!FIRST_UNIT.test(text)) return at;
  let end = FIRST_UNIT.lastIndex;
  for (;;) {
    JOINED_UNIT.lastIndex = end;
    const word = JOINED_UNIT.exec(text)?.[1];
    if (word === undefined || !joins(word)) return end;
    end += word.length + 1;
  }
}

function isUnitSymbol(word: string): boolean {
  const symbol = word.replace(POWER_BEHIND, "").replace("μ", "µ").replace("Ω", "ohm");
  return /^[°%']/.test(symbol) || UNIT_SYMBOLS.has(symbol);
}

const SEGMENT = '(?:[A-Za-z][A-Za-z0-9_]*|\\*|\\{[^{}"]*\\})';
const NAME = /[A-Za-z][A-Za-z0-9_]*(?:\.[A-Za-z][A-Za-z0-9_]*)*/y;

/** `2x1.6 mm`, `4xM8`: an x with figures on both sides. */
const CROSS_IN_FIGURES = byPattern(Cross, "x", /x(?=M?\d)/y);
const TIGHT_CROSS: LexerRule = {
  ...CROSS_IN_FIGURES,
  endOf: (text, at, before) => {
    const last = before.at(-1);
    return last !== undefined && isNumber(last) ? CROSS_IN_FIGURES.endOf(text, at, before) : at;
  },
};

const RECORD_RULES: readonly LexerRule[] = [
  ...STRINGS,
  ...DATES,
  METRIC,
  INCH,
  TIGHT_CROSS,
  unitRule(() => true),
  ...RECORD_NUMBERS,
  {
    ...byPattern(Path, `${LETTERS}*{`, new RegExp(`${SEGMENT}(?:\\.${SEGMENT})*`, "y")),
    typeOf: (image) => keywords.get(image) ?? Path,
  },
  byPattern(Cross, "×", /×/y),
  byPattern(Comma, ",", /,/y),
  byPattern(Equals, "=", /=/y),
];

const EXPRESSION_RULES: readonly LexerRule[] = [
  ...STRINGS,
  METRIC,
  onlyApart(INCH),
  onlyApart(byPattern(ExpressionFraction, DIGITS, EXPRESSION_FRACTION)),
  unitRule(isUnitSymbol),
  byPattern(UnsignedDecimal, DIGITS, /\d+(?:\.\d+)?(?:[eE][+-]?\d+(?![\w.]))?/y),
  { ...byPattern(Name, LETTERS, NAME), typeOf: (image) => (image === "in" ? ConvertTo : Name) },
  byPattern(Comma, ",", /,/y),
  byPattern(Open, "(", /\(/y),
  byPattern(Close, ")", /\)/y),
  byPattern(Plus, "+", /\+/y),
  byPattern(Minus, "-\u2212", /[-\u2212]/y),
  byPattern(Times, "*×·", /[*×·]/y),
  byPattern(Divide, "/", /\//y),
  byPattern(Power, "^", /\^/y),
  byPattern(Equals, "=", /=/y),
];

/** The types that a parser of either kind has to know. */
export const RECORD_TOKENS: TokenType[] = typesOf(RECORD_RULES, Word, ...keywords.values());
export const EXPRESSION_TOKENS: TokenType[] = typesOf(EXPRESSION_RULES, ConvertTo);

function typesOf(rules: readonly LexerRule[], ...others: TokenType[]): TokenType[] {
  return [...new Set([...rules.map(({ type }) => type), ...others, Unreadable])];
}

const recordReader = new TokenReader(RECORD_RULES, Unreadable);
const expressionReader = new TokenReader(EXPRESSION_RULES, Unreadable);

/** The tokens of what stands behind a record word. Offsets count from `offset`. */
export function recordTokens(text: string, offset = 0): IToken[] {
  return recordReader.read(text, offset);
}

export function expressionTokens(text: string, offset = 0): IToken[] {
  return expressionReader.read(text, offset);
}
