/**
 * Lines: where each ends, and which of the kinds of the notation it is. Done by hand, character by character, so
 * that prose never meets the lexer and a long log reads fast.
 */
import { blockEntry, recordWords } from "./vocabulary/vocabulary.ts";

const TAB = 9;
const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;
const SPACE = 32;
const QUOTE = 34;
const HASH = 35;
const COMMA = 44;
const BACKSLASH = 92;
const BAR = 124;

/** Offset of the start of every line; the first is 0. CR, LF and CRLF end a line, nothing else does. */
export function lineStartsOf(text: string): number[] {
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
  const indent = text.charCodeAt(start);
  if (indent !== SPACE && indent !== TAB) return COLUMN_0;
  return recordLine(text, at, end) ?? PROSE;
}

function recordLine(text: string, wordStart: number, end: number): Line | undefined {
  let at = wordStart;
  if (!isLetter(text.charCodeAt(at))) return undefined;
  let lower = true;
  while (at < end && isWordCharacter(text.charCodeAt(at))) {
    lower &&= !isUpper(text.charCodeAt(at)) && !isDigit(text.charCodeAt(at));
    at++;
  }
  const wordEnd = at;
  while (at < end && isSpace(text.charCodeAt(at))) at++;
  if (text[at] !== ":" || at === end) return undefined;
  const valueStart = at + 1;
  const tight = at === wordEnd;
  const spaced = valueStart === end || isSpace(text.charCodeAt(valueStart));
  if (tight && spaced && lower) return { is: "record", form: "record", wordStart, wordEnd, valueStart };
  if (!recordWords.has(text.slice(wordStart, wordEnd).toLowerCase())) return undefined;
  const form = lower ? "misplaced colon" : "wrong case";
  return { is: "record", form, wordStart, wordEnd, valueStart };
}

/** Where the statement on a line ends, and where the comment behind it stands, if there is one. */
export interface Content {
  readonly end: number;
  readonly comment: number | undefined;
}

/**
 * Finds the comment behind a header or record: `#` and a space (or the end) behind two or more spaces or a tab,
 * outside strings. The content's end leaves out the white space before it.
 */
export function contentOf(text: string, start: number, end: number): Content {
  let inString = false;
  for (let at = start; at < end; at++) {
    const code = text.charCodeAt(at);
    if (inString) {
      if (code === BACKSLASH) at++;
      else if (code === QUOTE) inString = false;
    } else if (code === QUOTE) {
      inString = !isDigit(text.charCodeAt(at - 1));
    } else if (code === HASH && startsComment(text, at, start, end)) {
      return { end: trimEnd(text, start, at), comment: at };
    }
  }
  return { end: trimEnd(text, start, end), comment: undefined };
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

/** True where the statement on the line ends in a comma outside a string, and so asks for a continuation. */
export function asksForMore(text: string, content: Content, start: number): boolean {
  if (content.end === start || text.charCodeAt(content.end - 1) !== COMMA) return false;
  let inString = false;
  for (let at = start; at < content.end; at++) {
    const code = text.charCodeAt(at);
    if (inString && code === BACKSLASH) at++;
    else if (code === QUOTE && (inString || !isDigit(text.charCodeAt(at - 1)))) inString = !inString;
  }
  return !inString;
}

const DATE_LIKE = /^\d[\d./-]*$/;
const ISO_DATE = /^\d{4}-\d{2}-\d{2}$/;
const NAME = /^[A-Za-z][A-Za-z0-9_]*$/;
const PATH = /^[A-Za-z][A-Za-z0-9_]*(?:\.[A-Za-z][A-Za-z0-9_]*)*$/;
const HEADER = /^(\S+)[\s\u00a0]+("|\S+)[\s\u00a0]*("|like(?=[\s\u00a0]|$))?/;

/** What the first argument of a header looks like: it tells which blocks an unknown word can have meant. */
export type HeaderShape = "date" | "string" | "path";

/**
 * The shape of a column-0 line that starts a block: a block word or an unknown word, with its first argument in
 * shape (a date; a string; a path followed by a string, `like` or the end). Undefined for any other line.
 */
export function headerShape(text: string, start: number, end: number): HeaderShape | undefined {
  const content = contentOf(text, start, end);
  const line = text.slice(start, content.end);
  const match = HEADER.exec(line);
  if (match === null) return undefined;
  const [whole, word = "", argument = "", follower] = match;
  if (!NAME.test(word)) return undefined;
  const shape = shapeOfArgument(argument, follower !== undefined || whole.length === line.length);
  const entry = blockEntry(word);
  if (
    shape === undefined ||
    (entry === undefined && argument !== '"' && shape === "date" && !ISO_DATE.test(argument))
  ) {
    return undefined;
  }
  return entry === undefined || shapesOfBlock(word) === shape ? shape : undefined;
}

function shapeOfArgument(argument: string, ended: boolean): HeaderShape | undefined {
  if (argument === '"') return "string";
  if (DATE_LIKE.test(argument)) return "date";
  return PATH.test(argument) && ended ? "path" : undefined;
}

/** The shape that the first argument of a block word has. */
export function shapesOfBlock(word: string): HeaderShape {
  if (word === "day") return "date";
  return word === "vehicle" ? "string" : "path";
}

export function isLineEnd(code: number): boolean {
  return code === LINE_FEED || code === CARRIAGE_RETURN;
}

/** White space within a line; no-break and thin spaces are read as spaces. */
export function isSpace(code: number): boolean {
  return (
    code === SPACE ||
    code === TAB ||
    code === 0xa0 ||
    code === 0x202f ||
    (code >= 0x2000 && code <= 0x200a) ||
    code === 0xb ||
    code === 0xc
  );
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

function isUpper(code: number): boolean {
  return code >= 65 && code <= 90;
}

function isLetter(code: number): boolean {
  return isUpper(code) || (code >= 97 && code <= 122);
}

function isWordCharacter(code: number): boolean {
  return isLetter(code) || isDigit(code) || code === 95;
}
