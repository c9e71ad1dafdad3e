/**
 * Which lines start a block. This alone divides a file, so it looks at one line by itself, and errs towards a block
 * where something was meant to be one: facts below a day whose date is misspelt must not fall to the day above.
 */
import { contentOf, isLetter } from "./lines.ts";
import { nearest } from "./nearest.ts";
import type { BlockWord } from "./syntax.ts";
import { blockEntry, vocabulary } from "./vocabulary/vocabulary.ts";
import { SPACE_CLASS } from "./white-space.ts";

/** What the first argument of a block word is: the date of a day, the name of a vehicle, a path or name. */
export type HeaderShape = "date" | "string" | "path";

export interface HeaderStart {
  readonly word: string;
  /** The block it is read as: the one it names, or the nearest; undefined where no block word is near. */
  readonly block: BlockWord | undefined;
}

const WORD = /^[A-Za-z][A-Za-z0-9_]*/;
const STRING_FIRST = new RegExp(`^${SPACE_CLASS}*"`);
const ARGUMENT = new RegExp(`^${SPACE_CLASS}+([^"\\s]+)`);
const FOLLOWER = new RegExp(`^${SPACE_CLASS}*(?:"|like(?!\\S)|$)`);
const PATH = /^[A-Za-z][A-Za-z0-9_]*(?:\.[A-Za-z][A-Za-z0-9_]*)*$/;
/** A date, in whatever order and by whatever sign its parts stand. */
const NUMERIC_DATE = /(?<![\d.])\d{1,4}([-/.])\d{1,2}\1\d{1,4}(?!\d)/;
const MONTH = "(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*";
const DATE_IN_WORDS = new RegExp(`\\b${MONTH}\\.?\\s\\d|\\d(?:st|nd|rd|th)?\\s${MONTH}\\b`, "i");

/**
 * The start of a block, or undefined for a line that starts none. A block word with its first argument in shape (a
 * date; a string; a path followed by a string, `like` or the end) starts one, or an unknown word so followed. So
 * does a block word whose argument means to be one: a date in another form, a name with a hyphen.
 */
export function headerStart(text: string, start: number, end: number): HeaderStart | undefined {
  if (!isLetter(text.charCodeAt(start))) return undefined;
  const line = text.slice(start, contentOf(text, start, end).end);
  const word = WORD.exec(line)?.[0] ?? "";
  const behind = line.slice(word.length);
  const known = blockEntry(word);
  if (known !== undefined) return meansToStart(known.word, behind) ? { word, block: known.word } : undefined;
  const shape = unknownShape(word, behind);
  return shape === undefined ? undefined : { word, block: nearestBlock(word, shape) };
}

/** The shape that the first argument of a block word has. */
function shapeOfBlock(word: BlockWord): HeaderShape {
  if (word === "day") return "date";
  return word === "vehicle" ? "string" : "path";
}

function meansToStart(block: BlockWord, behind: string): boolean {
  if (block === "day") return meansDate(behind);
  return STRING_FIRST.test(behind) || argumentOf(behind) !== undefined;
}

/** A figure first, or a date anywhere behind: `day 2.5.2026`, `day Sat 2026-05-02`, `day May 2`. */
function meansDate(behind: string): boolean {
  if (/^[^\w"]*\d/.test(behind)) return true;
  return NUMERIC_DATE.test(behind) || DATE_IN_WORDS.test(behind);
}

/** A single word that a string, `like` or the end follows. */
function argumentOf(behind: string): string | undefined {
  const match = ARGUMENT.exec(behind);
  return match !== null && FOLLOWER.test(behind.slice(match[0].length)) ? match[1] : undefined;
}

function unknownShape(word: string, behind: string): HeaderShape | undefined {
  if (STRING_FIRST.test(behind)) return "string";
  const argument = argumentOf(behind);
  if (argument !== undefined && PATH.test(argument)) return "path";
  const first = ARGUMENT.exec(behind)?.[1] ?? "";
  const isDate = NUMERIC_DATE.exec(first)?.[0] === first && first !== "";
  return isDate && (/^\d{4}-\d\d-\d\d$/.test(first) || nearest(word, ["day"]).length > 0)
    ? "date"
    : undefined;
}

/** Only a day takes a date, so a date says enough; any other unknown word is read as one that is near, if any. */
function nearestBlock(word: string, shape: HeaderShape): BlockWord | undefined {
  const candidates = vocabulary.blocks
    .map((entry) => entry.word)
    .filter((each) => shapeOfBlock(each) === shape);
  if (shape === "date") return candidates[0];
  return nearest(word, candidates, 1)[0] as BlockWord | undefined;
}
