/**
 * Logs as text, with marks under their lines where a complaint is expected:
 *
 *     removed: front.left.hub frnt
 *                             ^^^^ unreadable-value
 *
 * A `!` marks an empty place, where something is missing. Several marks may stand below one line.
 */
import { deepStrictEqual } from "node:assert/strict";
import { Document } from "../../grammar/document.ts";
import type {
  BlockNode,
  HeaderNode,
  ItemNode,
  RecordNode,
  Span,
  StrayNode,
  SyntaxFault,
} from "../../grammar/syntax.ts";
import { Values } from "../../grammar/values.ts";
import { blockEntry } from "../../grammar/vocabulary/vocabulary.ts";

const MARKS = /^\s*(?:(?:\^+|!) [a-z0-9-]+\s*)+$/;
const MARK = /(\^+|!) ([a-z0-9-]+)/g;

/** The text with the indentation of its first line taken off every line, and without its last empty line. */
export function log(text: string): string {
  const lines = text
    .replace(/^\n/, "")
    .replace(/\n[ ]*$/, "\n")
    .split("\n");
  const indent = /^ */.exec(lines[0] ?? "")?.[0].length ?? 0;
  return lines.map((line) => line.slice(Math.min(indent, /^ */.exec(line)?.[0].length ?? 0))).join("\n");
}

/** Reads a marked log and checks that its complaints are those that are marked, one to one. */
export function expectMarked(marked: string): Document {
  const lines = log(marked).split("\n");
  const kept: string[] = [];
  const expected: string[] = [];
  for (const line of lines) {
    if (!MARKS.test(line)) {
      kept.push(line);
      continue;
    }
    for (const match of line.matchAll(MARK)) {
      const width = match[1] === "!" ? 0 : (match[1] ?? "").length;
      expected.push(`${kept.length}:${match.index}+${width} ${match[2]}`);
    }
  }
  const document = Document.read(kept.join("\n"));
  deepStrictEqual(faultsIn(document), expected);
  return document;
}

/** The complaints about a document as `line:column+length code`, lines from 1, columns from 0. */
export function faultsIn(document: Document): string[] {
  return document.blocks.flatMap((block, index) =>
    faultsOf(block).map(({ start, end, code }) => {
      const { line, character } = document.positionIn(index, start);
      return `${line + 1}:${character}+${end - start} ${code}`;
    }),
  );
}

export function faultsOf({ items }: BlockNode): SyntaxFault[] {
  return items
    .flatMap((item) => ("faults" in item ? [...item.faults] : []))
    .sort((a, b) => a.start - b.start || a.end - b.end);
}

/** The kinds of a document's lines, in order, as `record removed`, `prose`, `header day`. */
export function linesOf(document: Document): string[] {
  return document.blocks.flatMap(({ items }) => items.map(kindOf));
}

function kindOf(item: ItemNode): string {
  if (item.kind === "header") return `header ${item.block ?? "?"}`;
  return item.kind === "record" ? `record ${item.word.text}` : item.kind;
}

/** The one record of a line as it reads in a block of that word, refused if it brings complaints. */
export function readRecord(block: string, line: string): RecordNode {
  const record = recordIn(block, line);
  deepStrictEqual(record.faults, []);
  return record;
}

/** The record of a line in a block of that word, whatever is wrong with it. */
export function recordIn(block: string, line: string): RecordNode {
  const header = blockEntry(block)?.example ?? "";
  const items = Document.read(`${header}\n  ${line}`).blocks.at(-1)?.items ?? [];
  const record = items.find((item): item is RecordNode => item.kind === "record");
  if (record === undefined) throw new Error(`no record: ${line}`);
  return record;
}

export function headerOf(text: string): HeaderNode {
  const header = Document.read(text).blocks.at(-1)?.header;
  if (header === undefined) throw new Error(`no header: ${text}`);
  return header;
}

/** What a line says, in short: the roles of its values, without positions. */
export function said(statement: { readonly values: ReadonlyMap<string, unknown> }): Record<string, unknown> {
  return Object.fromEntries([...statement.values].map(([role, value]) => [role, plain(value)]));
}

/** A node without positions and kinds: single values become their text. */
export function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain);
  if (value instanceof Values)
    return Object.fromEntries([...value].map(([key, inner]) => [key, plain(inner)]));
  if (typeof value !== "object" || value === null) return value;
  const node = value as Record<string, unknown> & Span & { readonly kind?: string };
  switch (node.kind) {
    case "number":
    case "unit":
    case "word":
    case "date":
    case "thread":
    case "reference":
      return node.text;
    case "string":
      return JSON.stringify(node.text);
    case "class":
      return `${node.system} ${node.text}`;
    case "quantity":
      return quantityText(node);
    case "flag":
      return true;
    case "money":
      return `${plain(node.number)} ${plain(node.currency)}${node.per === undefined ? "" : `/${node.per}`}`;
    case "references":
    case "words":
    case "quantities":
    case "ranges":
    case "countedReferences":
      return plain(node.items);
    default:
      return fieldsOf(node);
  }
}

function quantityText(node: Record<string, unknown>): string {
  const parts = node.parts as readonly { number: unknown; unit: unknown }[];
  const texts = parts.flatMap(({ number, unit }) => [plain(number), plain(unit)]);
  return [...texts, node.each === true ? "each" : undefined].filter((text) => text !== undefined).join(" ");
}

function fieldsOf(node: Record<string, unknown>): Record<string, unknown> {
  const fields = Object.entries(node).filter(
    ([key, value]) => value !== undefined && !["kind", "start", "end"].includes(key),
  );
  return Object.fromEntries(fields.map(([key, value]) => [key, plain(value)]));
}

/** Every line that could not be read as anything. */
export function straysIn(document: Document): StrayNode[] {
  return document.blocks.flatMap(({ items }) =>
    items.filter((item): item is StrayNode => item.kind === "stray"),
  );
}
