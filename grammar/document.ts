/**
 * A file as a list of blocks. An edit reads again only the blocks that it touches and the one that holds the
 * character before it; all others keep their trees, whose positions are relative to their own block.
 */
import { forgetItems, readBlock } from "./block.ts";
import { headerStart } from "./header-shape.ts";
import { contentEndOf, lineStartsOf } from "./lines.ts";
import type { BlockNode } from "./syntax.ts";

/** One, or several where files were joined. */
const BYTE_ORDER_MARKS = /^\ufeff+/;

/** A place in a text: both count from 0; `character` in UTF-16 units. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

export class Document {
  readonly blocks: readonly BlockNode[];
  /** Offset of each block in the text. */
  readonly offsets: readonly number[];
  /** Line of each block's first character. */
  readonly lines: readonly number[];
  readonly length: number;
  readonly lineCount: number;
  private hasLines = true;

  private constructor(blocks: readonly BlockNode[]) {
    const offsets: number[] = [];
    const lines: number[] = [];
    let offset = 0;
    let line = 0;
    for (const block of blocks) {
      offsets.push(offset);
      lines.push(line);
      offset += block.text.length;
      line += lineBreaksOf(block);
    }
    this.blocks = blocks;
    this.offsets = offsets;
    this.lines = lines;
    this.length = offset;
    this.lineCount = line + 1;
  }

  /** Reads a whole text. A byte order mark is taken off first and never counted. */
  static read(text: string): Document {
    return new Document(readBlocks(withoutMark(text)));
  }

  get text(): string {
    return this.blocks.map(({ text }) => text).join("");
  }

  /**
   * Lets go of the lines of all blocks, for a text that nobody is at work on: what was made of them is kept elsewhere,
   * and they are read again where one asks for them.
   */
  forgetLines(): void {
    if (this.hasLines) for (const block of this.blocks) forgetItems(block);
    this.hasLines = false;
  }

  /** The document with `start` to `end` replaced; offsets beyond the text are taken as its end. */
  edit(start: number, end: number, replacement: string): Document {
    const from = Math.min(Math.max(start, 0), this.length);
    const to = Math.min(Math.max(end, from), this.length);
    if (this.blocks.length === 0) return Document.read(replacement);
    const last = this.blockIndexAt(to);
    let first = this.blockIndexAt(Math.max(0, from - 1));
    let blocks = this.readAgain(first, last, from, to, replacement);
    // A header that the edit took away leaves lines that belong to the block above.
    if (first > 0 && blocks[0]?.header === undefined) {
      first--;
      blocks = this.readAgain(first, last, from, to, replacement);
    }
    return new Document([...this.blocks.slice(0, first), ...blocks, ...this.blocks.slice(last + 1)]);
  }

  /** The blocks `first` to `last` with the edit made in them; those whose text is the same stay the same. */
  private readAgain(first: number, last: number, from: number, to: number, replacement: string): BlockNode[] {
    const old = this.blocks.slice(first, last + 1);
    const base = this.offsets[first] as number;
    const text = old.map((block) => block.text).join("");
    const changed = text.slice(0, from - base) + replacement + text.slice(to - base);
    return readBlocks(first === 0 ? withoutMark(changed) : changed, old);
  }

  /** The index of the block that holds the character at an offset; the last one for the end of the text. */
  blockIndexAt(offset: number): number {
    return lastAtOrBefore(this.offsets, offset);
  }

  positionAt(offset: number): Position {
    const at = Math.min(Math.max(offset, 0), this.length);
    const index = this.blockIndexAt(at);
    const block = this.blocks[index];
    if (block === undefined) return { line: 0, character: 0 };
    return this.positionIn(index, at - (this.offsets[index] as number));
  }

  /** The place of an offset within a block. */
  positionIn(block: number, offset: number): Position {
    const { lineStarts } = this.blocks[block] as BlockNode;
    const line = lastAtOrBefore(lineStarts, offset);
    return { line: (this.lines[block] as number) + line, character: offset - (lineStarts[line] as number) };
  }

  /** The offset of a place; beyond the end of a line it is that line's end. */
  offsetAt({ line, character }: Position): number {
    if (line < 0 || this.blocks.length === 0) return 0;
    if (line >= this.lineCount) return this.length;
    const index = lastAtOrBefore(this.lines, line);
    const block = this.blocks[index] as BlockNode;
    const inner = line - (this.lines[index] as number);
    const start = block.lineStarts[inner] ?? block.text.length;
    const end = contentEndOf(block.text, start, block.lineStarts[inner + 1] ?? block.text.length);
    return (this.offsets[index] as number) + Math.min(start + Math.max(0, character), end);
  }
}

/** Line ends in a block; a block that is followed by another ends with one. */
function lineBreaksOf({ lineStarts }: BlockNode): number {
  return lineStarts.length - 1;
}

function withoutMark(text: string): string {
  return text.replace(BYTE_ORDER_MARKS, "");
}

/** @param before the blocks as they were: those that are still there stay the same */
function readBlocks(text: string, before: readonly BlockNode[] = []): BlockNode[] {
  if (text === "") return [];
  const same = new Map(before.map((block) => [block.text, block]));
  const lineStarts = lineStartsOf(text);
  const starts = [0];
  for (let line = 1; line < lineStarts.length; line++) {
    const start = lineStarts[line] as number;
    const end = lineStarts[line + 1] ?? text.length;
    if (headerStart(text, start, contentEndOf(text, start, end)) !== undefined) starts.push(start);
  }
  return starts.map((start, index) => {
    const block = text.slice(start, starts[index + 1] ?? text.length);
    return same.get(block) ?? readBlock(block, before[index]);
  });
}

/** The index of the last element that is not greater; 0 for a value before all. */
function lastAtOrBefore(ascending: readonly number[], value: number): number {
  let low = 0;
  let high = ascending.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((ascending[middle] as number) <= value) low = middle;
    else high = middle - 1;
  }
  return low;
}
