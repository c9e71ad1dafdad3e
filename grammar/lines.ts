/**
 * Lines: where each ends, and which of the kinds of the notation it is. Done by hand, character by character, so
 * that prose never meets the lexer and a long log reads fast.
 */
import type { Span } from "./syntax.ts";
import { recordWords } from "./vocabulary/vocabulary.ts";
import { isIndent, isSpace } from "./white-space.ts";

const TAB = 9;
const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;
const QUOTE = 34;
const HASH = 35;
const COMMA = 44;
const COLON = 58;
const BACKSLASH = 92;
const UNDERSCORE = 95;
const BAR = 124;

/** Offset of the start of every line; the first is 0. CR, LF and CRLF end a line, nothing else does. */
export function lineStartsOf(text: string): number[] {
  if (text.includes("\r")) return lineStartsWithReturns(text);
  const starts = [0];
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) starts.push(at + 1);
  return starts;
}

function lineStartsWithReturns(text: string): number[] {
  const starts = [0];
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === LINE_FEED || (code === CARRIAGE_RETURN && text.charCodeAt(at + 1) !== LINE_FEED))
      starts.push(at + 1);
  }
  return starts;
}

/** The end of the line without its line end. */
export function contentEndOf(text: string, start: number, end: number): number {
  let last = end;
  while (last > start && isLineEnd(text.charCodeAt(last - 1))) last--;
  return last;
}

function isLineEnd(code: number): boolean {
  return code === LINE_FEED || code === CARRIAGE_RETURN;
}

export type RecordForm = "record" | "wrong case" | "misplaced colon";

/** What a line is by itself; whether an indented line goes on with a record depends on the one before it. */
export type Line =
  | { readonly is: "blank" | "comment" | "prose" | "column 0" }
  | {
      readonly is: "record";
      readonly form: RecordForm;
      readonly wordStart: number;
      readonly wordEnd: number;
      /** Where the values begin, behind the colon. */
      readonly valueStart: number;
    };

const BLANK: Line = { is: "blank" };
const COMMENT: Line = { is: "comment" };
const PROSE: Line = { is: "prose" };
const COLUMN_0: Line = { is: "column 0" };

/** Classifies the line from `start` to `end` (its content, without the line end). */
export function classifyLine(text: string, start: number, end: number): Line {
  let at = start;
  while (at < end && isSpace(text.charCodeAt(at))) at++;
  if (at === end) return BLANK;
  const first = text.charCodeAt(at);
  if (first === HASH && (at + 1 === end || isSpace(text.charCodeAt(at + 1)))) return COMMENT;
  if (first === BAR) return PROSE;
  if (!isIndent(text.charCodeAt(start))) return COLUMN_0;
  return recordLine(text, at, end) ?? PROSE;
}

function recordLine(text: string, wordStart: number, end: number): Line | undefined {
  let at = wordStart;
  if (!isLetter(text.charCodeAt(at))) return undefined;
  let lower = true;
  while (at < end && isNameCharacter(text.charCodeAt(at))) {
    const code = text.charCodeAt(at);
    lower &&= code === UNDERSCORE || (code >= 97 && code <= 122);
    at++;
  }
  const wordEnd = at;
  while (at < end && isSpace(text.charCodeAt(at))) at++;
  if (at === end || text.charCodeAt(at) !== COLON) return undefined;
  const valueStart = at + 1;
  const tight = at === wordEnd;
  const spaced = valueStart === end || isSpace(text.charCodeAt(valueStart));
  if (tight && spaced && lower) return { is: "record", form: "record", wordStart, wordEnd, valueStart };
  if (!recordWords.has(text.slice(wordStart, wordEnd).toLowerCase())) return undefined;
  const form = lower ? "misplaced colon" : "wrong case";
  return { is: "record", form, wordStart, wordEnd, valueStart };
}

/** What a line says, without the comment behind it. */
export interface Content {
  /** The end of what is said, white space before a comment or the line's end left out. */
  readonly end: number;
  /** Where the comment starts, if there is one. */
  readonly comment: number | undefined;
  /** True where it ends in a comma outside a string, and so asks for a continuation. */
  readonly asksForMore: boolean;
}

/**
 * Finds the comment behind a header or record: `#` and a space (or the end) behind two or more spaces or a tab,
 * outside strings.
 */
export function contentOf(text: string, start: number, end: number): Content {
  let inString = false;
  let comment: number | undefined;
  for (let at = start; at < end && comment === undefined; at++) {
    const code = text.charCodeAt(at);
    if (inString) {
      if (code === BACKSLASH) at++;
      else if (code === QUOTE) inString = false;
    } else if (code === QUOTE) inString = opensString(text, at);
    else if (code === HASH && startsComment(text, at, start, end)) comment = at;
  }
  const said = trimEnd(text, start, comment ?? end);
  return {
    end: said,
    comment,
    asksForMore: !inString && said > start && text.charCodeAt(said - 1) === COMMA,
  };
}

/** The text from `start` to `end` with comments and line ends made spaces, so that offsets stay. */
export function blanked(text: string, start: number, end: number, comments: readonly Span[]): string {
  let said = "";
  let at = start;
  for (const comment of comments) {
    if (comment.end > end) break;
    said += text.slice(at, comment.start).padEnd(comment.end - at, " ");
    at = comment.end;
  }
  return (said + text.slice(at, end)).replace(/[\r\n]/g, " ");
}

/** True unless the quotation mark at `at` stands tight behind a number, where it means inches. */
export function opensString(text: string, at: number): boolean {
  let start = at;
  while (start > 0 && isNumberCharacter(text.charCodeAt(start - 1))) start--;
  return !TIGHT_NUMBER.test(text.slice(start, at));
}

/** A number that ends a run of the characters of names, numbers and dates; not the end of a name or a date. */
const TIGHT_NUMBER = /^(?!.*\d{4}-\d\d-\d\d$)(?:.*[^\w.])?\d[\d.]*(?:[eE][+-]?\d+)?$/;

function isNumberCharacter(code: number): boolean {
  return isNameCharacter(code) || (code >= 43 && code <= 47);
}

function startsComment(text: string, at: number, start: number, end: number): boolean {
  if (at + 1 < end && !isSpace(text.charCodeAt(at + 1))) return false;
  const before = text.charCodeAt(at - 1);
  return at === start || before === TAB || (isSpace(before) && isSpace(text.charCodeAt(at - 2)));
}

function trimEnd(text: string, start: number, end: number): number {
  let at = end;
  while (at > start && isSpace(text.charCodeAt(at - 1))) at--;
  return at;
}

export function isLetter(code: number): boolean {
  return (code >= 65 && code <= 90) || (code >= 97 && code <= 122);
}

/** A letter, digit or underscore. */
export function isNameCharacter(code: number): boolean {
  return isLetter(code) || (code >= 48 && code <= 57) || code === UNDERSCORE;
}
