/** Selections that grow from the word at the cursor to its value, its line, its block, and the file. */
import type { Range, SelectionRange } from "vscode-languageserver";
import type { Document, Position } from "../../../grammar/document.ts";
import { contentEndOf } from "../../../grammar/lines.ts";
import type { Span } from "../../../grammar/syntax.ts";
import { touches } from "../text/inner-nodes.ts";
import { itemAt, valueAt } from "../text/statement-at.ts";
import { rangeIn } from "../to-protocol.ts";

export function selectionRanges(document: Document, positions: readonly Position[]): SelectionRange[] {
  return positions.map((position) => selectionAt(document, position));
}

function selectionAt(document: Document, position: Position): SelectionRange {
  const at = document.offsetAt(position);
  const whole: Range = { start: { line: 0, character: 0 }, end: document.positionAt(document.length) };
  const index = document.blockIndexAt(at);
  const block = document.blocks[index];
  if (block === undefined) return { range: whole };
  const offset = at - (document.offsets[index] as number);
  const spans: Span[] = [{ start: 0, end: block.text.trimEnd().length }];
  const item = itemAt(block, offset);
  if (item !== undefined) {
    const end = contentEndOf(block.text, item.start, item.end);
    const start = item.start + (/^[^\S\r\n]*/.exec(block.text.slice(item.start, end))?.[0].length ?? 0);
    spans.push({ start, end });
    if (item.kind === "record" || item.kind === "header") {
      if (touches(item.word, offset)) spans.push(item.word);
      else spans.push(...(valueAt(item, offset)?.nodes ?? []));
    }
  }
  return nested(
    whole,
    spans.map((span) => rangeIn(document, index, span)),
  );
}

/** Ranges from the widest to the narrowest, each once. */
function nested(whole: Range, ranges: readonly Range[]): SelectionRange {
  let selection: SelectionRange = { range: whole };
  for (const range of ranges)
    if (!isSame(range, selection.range) && isInside(range, selection.range))
      selection = { range, parent: selection };
  return selection;
}

function isSame(a: Range, b: Range): boolean {
  return compare(a.start, b.start) === 0 && compare(a.end, b.end) === 0;
}

function isInside(inner: Range, outer: Range): boolean {
  return compare(outer.start, inner.start) <= 0 && compare(inner.end, outer.end) <= 0;
}

function compare(a: Position, b: Position): number {
  return a.line - b.line || a.character - b.character;
}
