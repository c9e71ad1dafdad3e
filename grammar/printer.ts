/**
 * The canonical layout of a log, as edits to its text: records indented by two spaces and continuation lines by
 * four, one space behind the colon and between values, two before a comment, none at the end of a line.
 *
 * What is left alone, byte for byte: prose; every line that has a complaint, so that nothing is made of what was not
 * understood; line ends, the number of blank lines, and how units, threads and fractions are spelt. Values are never
 * aligned in columns: a column has to be moved again with every word that is longer, and the change then hides what
 * was changed.
 */
import type { IToken, TokenType } from "chevrotain";
import { Document } from "./document.ts";
import { blanked, contentEndOf, lineStartsOf } from "./lines.ts";
import type {
  BlockNode,
  ExpressionNode,
  HeaderNode,
  ItemNode,
  RecordNode,
  Span,
  ValueNode,
} from "./syntax.ts";
import * as token from "./tokens.ts";
import { spanOf } from "./value-nodes.ts";
import { isSpace, SPACE_CLASS } from "./white-space.ts";

/** A replacement; offsets count from the start of the document. */
export interface LayoutEdit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

const INDENT = "  ";
const CONTINUATION_INDENT = "    ";
const BEFORE_COMMENT = "  ";

/** The text in the canonical layout, with its byte order mark; what is in it already comes back as it is. */
export function format(text: string): string {
  const document = Document.read(text);
  const written = document.text;
  let formatted = text.slice(0, text.length - written.length);
  let at = 0;
  for (const edit of layoutEdits(document)) {
    formatted += written.slice(at, edit.start) + edit.text;
    at = edit.end;
  }
  return formatted + written.slice(at);
}

/** The edits that bring a document into the canonical layout, in order, none touching another. */
export function layoutEdits(document: Document): LayoutEdit[] {
  return document.blocks.flatMap((block, index) => {
    const offset = document.offsets[index] ?? 0;
    return block.items
      .flatMap((item) => editsOf(block, item))
      .map(({ start, end, text }) => ({ start: start + offset, end: end + offset, text }));
  });
}

function editsOf(block: BlockNode, item: ItemNode): LayoutEdit[] {
  switch (item.kind) {
    case "prose":
    case "stray":
      return [];
    case "blank":
      return replaced(block.text, item.start, contentEndOf(block.text, item.start, item.end), "");
    case "comment":
      return commentEdits(block.text, item.start, contentEndOf(block.text, item.start, item.end));
    default:
      return item.faults.length > 0 ? [] : statementEdits(block, item);
  }
}

/** A comment keeps its words; indented, it is indented like a record. */
function commentEdits(text: string, start: number, end: number): LayoutEdit[] {
  let at = start;
  while (isSpace(text.charCodeAt(at))) at++;
  return [
    ...replaced(text, start, at, at === start ? "" : INDENT),
    ...replaced(text, trimmedEnd(text, at, end), end, ""),
  ];
}

function statementEdits(block: BlockNode, statement: HeaderNode | RecordNode): LayoutEdit[] {
  const { text } = block;
  const valueStart = statement.kind === "header" ? statement.word.end : statement.word.end + 1;
  const atoms = atomsOf(text, valueStart, statement);
  const lines = linesOf(text, statement);
  const atomsByLine = byLine(atoms, lines);
  const commentsByLine = byLine(statement.comments, lines);
  return lines.flatMap((line, number) => {
    const onLine = atomsByLine[number] ?? [];
    const comment = commentsByLine[number]?.[0];
    const said = number === 0 ? [startOf(statement, valueStart), ...onLine] : onLine;
    const [first] = said;
    const edits =
      first === undefined ? [] : replaced(text, line.start, first.start, indentOf(statement, number));
    for (const [index, atom] of said.entries()) {
      const before = said[index - 1];
      if (before !== undefined)
        edits.push(...replaced(text, before.end, atom.start, gapBetween(before, atom)));
    }
    const end = said.at(-1)?.end ?? line.start;
    if (comment === undefined) return [...edits, ...replaced(text, end, line.end, "")];
    return [
      ...edits,
      ...replaced(text, end, comment.start, BEFORE_COMMENT),
      ...replaced(text, trimmedEnd(text, comment.start, line.end), line.end, ""),
    ];
  });
}

function indentOf({ kind }: HeaderNode | RecordNode, line: number): string {
  if (kind === "header") return "";
  return line === 0 ? INDENT : CONTINUATION_INDENT;
}

/** The lines of a statement, without their line ends. */
function linesOf(text: string, { start, end }: Span): Span[] {
  const starts = lineStartsOf(text.slice(start, end)).map((at) => at + start);
  return starts
    .filter((at) => at < end)
    .map((at, index) => ({ start: at, end: contentEndOf(text, at, starts[index + 1] ?? end) }));
}

/** Pieces in their order, divided by the lines that they start in. */
function byLine<T extends Span>(pieces: readonly T[], lines: readonly Span[]): T[][] {
  const divided = lines.map((): T[] => []);
  let line = 0;
  for (const piece of pieces) {
    while (piece.start >= (lines[line]?.end ?? piece.end)) line++;
    divided[line]?.push(piece);
  }
  return divided;
}

/** A piece of a statement that is kept as written; between pieces the layout decides. */
interface Atom extends Span {
  readonly kind: "plain" | "word" | "text" | "unit" | "comma" | "range" | "apart" | "open" | "close";
  /** True where it stood tight behind the piece before it. */
  readonly tight: boolean;
}

/** The word of a statement, with its colon. */
function startOf({ word }: HeaderNode | RecordNode, end: number): Atom {
  return { start: word.start, end, kind: "apart", tight: false };
}

/** The space between two pieces on one line. */
function gapBetween(before: Atom, after: Atom): string {
  if (after.kind === "comma" || after.kind === "close" || before.kind === "open") return "";
  if (before.kind === "range" || after.kind === "range") return "";
  const parted = before.kind === "comma" || before.kind === "apart" || after.kind === "apart";
  if (parted || after.kind === "text" || after.kind === "unit" || after.kind === "word") return " ";
  return after.tight ? "" : " ";
}

function atomsOf(text: string, valueStart: number, statement: HeaderNode | RecordNode): Atom[] {
  const said = blanked(text, valueStart, statement.end, statement.comments);
  const tokens = token.recordTokens(said, valueStart);
  const atoms = withExpression(tokens, said, valueStart, expressionIn(statement.values)).flatMap((read) =>
    read.tokenType === token.Path ? atomsOfPath(read) : [{ ...spanOf(read), kind: kindOf(read) }],
  );
  return atoms.map((atom, index) => ({ ...atom, tight: atom.start === atoms[index - 1]?.end }));
}

/** The tokens of a statement, those of an expression in it read by the rules of expressions. */
function withExpression(
  tokens: readonly IToken[],
  said: string,
  offset: number,
  expression: ExpressionNode | undefined,
): readonly IToken[] {
  const equals = tokens.findIndex(({ tokenType }) => tokenType === token.Equals);
  const sign = tokens[equals];
  if (expression === undefined || sign === undefined) return tokens;
  const { end: start } = spanOf(sign);
  return [
    ...tokens.slice(0, equals + 1),
    ...token.expressionTokens(said.slice(start - offset, expression.end - offset), start),
    ...tokens.filter(({ startOffset }) => startOffset >= expression.end),
  ];
}

function expressionIn(values: ReadonlyMap<string, ValueNode>): ExpressionNode | undefined {
  for (const value of values.values()) {
    if (value.kind === "expression") return value;
    const inner = value.kind === "definition" ? expressionIn(value.values) : undefined;
    if (inner !== undefined) return inner;
  }
  return undefined;
}

const PIECES_OF_PATH = new RegExp(`[{},]|(?:(?!${SPACE_CLASS})[^{},])+`, "g");
const KINDS_IN_PATH: Readonly<Record<string, Atom["kind"]>> = { "{": "open", "}": "close", ",": "comma" };

/** A set in braces is laid out like a list. */
function atomsOfPath(read: IToken): Omit<Atom, "tight">[] {
  return [...read.image.matchAll(PIECES_OF_PATH)].map((match) => {
    const start = read.startOffset + match.index;
    const kind = KINDS_IN_PATH[match[0]] ?? (match.index === 0 ? "word" : "plain");
    return { start, end: start + match[0].length, kind };
  });
}

const KINDS: ReadonlyMap<TokenType, Atom["kind"]> = new Map([
  [token.Text, "text"],
  [token.Comma, "comma"],
  [token.Range, "range"],
  [token.Cross, "apart"],
  [token.Equals, "apart"],
  [token.PlusMinus, "apart"],
  [token.Deviations, "apart"],
  [token.Open, "open"],
  [token.Close, "close"],
]);

/** `°` and `'` alone stand tight behind their number or apart, as the author has it. */
function kindOf({ tokenType, image }: IToken): Atom["kind"] {
  if (tokenType === token.Unit) return image === "°" || image === "'" ? "plain" : "unit";
  return KINDS.get(tokenType) ?? (tokenType.CATEGORIES?.includes(token.Word) ? "word" : "plain");
}

function trimmedEnd(text: string, start: number, end: number): number {
  let at = end;
  while (at > start && isSpace(text.charCodeAt(at - 1))) at--;
  return at;
}

function replaced(text: string, start: number, end: number, replacement: string): LayoutEdit[] {
  return text.slice(start, end) === replacement ? [] : [{ start, end, text: replacement }];
}
