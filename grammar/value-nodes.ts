/** From tokens to nodes of the tree. */
import type { IToken } from "chevrotain";
import type {
  DateNode,
  LimitsNode,
  NumberNode,
  QuantityNode,
  QuantityPart,
  ReferenceNode,
  ReferenceSegment,
  Span,
  StringNode,
  ThreadNode,
  UnitNode,
  WordNode,
} from "./syntax.ts";
import * as token from "./tokens.ts";

export function spanOf(first: IToken, last: IToken = first): Span {
  return { start: startOf(first), end: endOf(last) };
}

/**
 * Whole numbers even while the parser records its own rules, with tokens that stand nowhere: one node with no number for
 * its place, and the engine would keep those of all nodes as floating-point numbers, each an object of its own.
 */
export function startOf(read: IToken): number {
  return read.startOffset | 0;
}

export function endOf(read: IToken): number {
  return (read.startOffset + read.image.length) | 0;
}

// Nodes name their places one by one: spread into them, each would keep them in an object of its own.

export function numberNode(read: IToken): NumberNode {
  return { kind: "number", text: inCommon(read.image), start: startOf(read), end: endOf(read) };
}

export function unitNode(read: IToken): UnitNode {
  return { kind: "unit", text: inCommon(read.image), start: startOf(read), end: endOf(read) };
}

export function threadNode(read: IToken): ThreadNode {
  return { kind: "thread", text: inCommon(read.image), start: startOf(read), end: endOf(read) };
}

export function dateNode(read: IToken): DateNode {
  return { kind: "date", text: read.image, start: startOf(read), end: endOf(read) };
}

export function wordNode(read: IToken): WordNode {
  return { kind: "word", text: inCommon(read.image), start: startOf(read), end: endOf(read) };
}

/** A string without its marks; `\"` and `\\` stand for themselves, any other backslash for a backslash. */
export function stringNode(read: IToken): StringNode {
  const closed = read.tokenType !== token.OpenText;
  const inner = read.image.slice(1, closed ? -1 : undefined);
  const text = inner.replace(/\\(["\\])/g, "$1");
  return {
    kind: "string",
    text: closed ? text : text.trimEnd(),
    closed,
    start: startOf(read),
    end: endOf(read),
  };
}

export function referenceNode(read: IToken): ReferenceNode {
  const { text, segments } = pathIn(read.image);
  return { kind: "reference", text, segments, start: startOf(read), end: endOf(read) };
}

type Path = Pick<ReferenceNode, "text" | "segments">;

/** A log names the same things again and again: nodes share the texts and paths of all of them. */
const texts = new Map<string, string>();
const paths = new Map<string, Path>();
/** So many are remembered; beyond it the memory starts afresh, so that endless new spellings cannot fill it. */
const MOST_REMEMBERED = 30_000;
/** Longer texts are hardly ever the same, and may be cut from a file's text, which would be kept with them. */
const SHORT = 12;

function inCommon(text: string): string {
  if (text.length > SHORT) return text;
  const known = texts.get(text);
  if (known !== undefined) return known;
  if (texts.size >= MOST_REMEMBERED) texts.clear();
  texts.set(text, text);
  return text;
}

function pathIn(image: string): Path {
  const known = paths.get(image);
  if (known !== undefined) return known;
  // A text of its own, not one cut from the file.
  const text = Array.from(image).join("");
  const path = { text, segments: segmentsOf(text) };
  if (paths.size >= MOST_REMEMBERED) paths.clear();
  paths.set(text, path);
  return path;
}

const SEGMENT = /\{([^}]*)\}|\*|[^.]+/g;

function segmentsOf(text: string): ReferenceSegment[] {
  if (!/[*{]/.test(text)) return text.split(".").map((name) => ({ is: "name", text: inCommon(name) }));
  return [...text.matchAll(SEGMENT)].map(([whole, options]) => {
    if (whole === "*") return { is: "every" };
    if (options === undefined) return { is: "name", text: inCommon(whole) };
    return { is: "choice", options: options.split(",").map((option) => inCommon(option.trim())) };
  });
}

export function quantityNode(
  parts: readonly [QuantityPart, ...QuantityPart[]],
  each: IToken | undefined,
): QuantityNode {
  const { number, unit } = parts.at(-1) ?? parts[0];
  const end = each === undefined ? (unit ?? number).end : spanOf(each).end;
  return { kind: "quantity", parts, each: each !== undefined, start: parts[0].number.start, end };
}

/** Units that follow each other within one value, the larger first. */
const CHAINS: readonly (readonly string[])[] = [
  ["deg", "arcmin", "arcsec"],
  ["h", "min", "s"],
  ["ft", "in"],
  ["lb", "oz"],
  ["week", "d", "h"],
  ["year", "month"],
];

/** Other spellings of the units in the chains. */
const SAME_UNITS: Readonly<Record<string, string>> = {
  "°": "deg",
  "'": "arcmin",
  hour: "h",
  hours: "h",
  mins: "min",
  minute: "min",
  minutes: "min",
  second: "s",
  seconds: "s",
  day: "d",
  days: "d",
  weeks: "week",
  months: "month",
  years: "year",
};

/** True where the smaller unit may follow the larger one within one value. */
export function followsInChain(larger: string, smaller: string): boolean {
  const first = SAME_UNITS[larger] ?? larger;
  const second = SAME_UNITS[smaller] ?? smaller;
  return CHAINS.some((chain) => chain.includes(first) && chain.indexOf(second) > chain.indexOf(first));
}

/** The two figures of `+0.05/-0.00`. */
export function splitDeviations(read: IToken): [NumberNode, NumberNode] {
  const slash = read.image.indexOf("/");
  const part = (from: number, to: number): NumberNode => {
    const raw = read.image.slice(from, to);
    const start = startOf(read) + from + (raw.length - raw.trimStart().length);
    return { kind: "number", text: raw.trim(), start, end: start + raw.trim().length };
  };
  return [part(0, slash), part(slash + 1, read.image.length)];
}

const ISO_286_CLASS = /^(?:[a-z]|[A-Z]|cd|CD|ef|EF|fg|FG|js|JS|za|ZA|zb|ZB|zc|ZC)(?:1[0-8]|[1-9])$/;

/** `25 h6` alone is a class of ISO 286; anything else alone is a nominal value without tolerance. */
export function nominalOrClass(nominal: QuantityNode): LimitsNode {
  const { number, unit } = nominal.parts[0];
  const shared = { kind: "limits", fresh: undefined, start: nominal.start, end: nominal.end } as const;
  if (unit !== undefined && nominal.parts.length === 1 && ISO_286_CLASS.test(unit.text)) {
    return { ...shared, form: "iso286", size: number, toleranceClass: { ...unit, kind: "word" } };
  }
  return { ...shared, form: "nominal", nominal };
}
