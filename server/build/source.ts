/** Where things stand: files, blocks, and stretches of them. */
import type { Document } from "../../grammar/document.ts";
import type { BlockNode, Span } from "../../grammar/syntax.ts";

/** One `.cotter` file of a build, by its path relative to the build's folder, with `/`. */
export interface SourceFile {
  readonly path: string;
  readonly document: Document;
}

/** A block in its file. Trees are relative to their block, so a place needs both. */
export interface BlockSite {
  readonly file: SourceFile;
  /** Index in the file's document. */
  readonly index: number;
  readonly block: BlockNode;
}

/** A stretch of a block in a file: what every derived thing can be led back to. */
export interface Place {
  readonly site: BlockSite;
  readonly start: number;
  readonly end: number;
}

export function placeAt(site: BlockSite, { start, end }: Span): Place {
  return { site, start, end };
}

/** The blocks of the files, in the order of definition: file path by code point, then line. */
export function sitesOf(files: readonly SourceFile[]): BlockSite[] {
  return [...files].sort((a, b) => compareCodePoints(a.path, b.path)).flatMap(sitesIn);
}

/** Sites stay the same as long as their file does: what is derived from them can be kept with them. */
const remembered = new WeakMap<SourceFile, readonly BlockSite[]>();

function sitesIn(file: SourceFile): readonly BlockSite[] {
  const known = remembered.get(file);
  if (known !== undefined) return known;
  const sites = file.document.blocks.map((block, index) => ({ file, index, block }));
  remembered.set(file, sites);
  return sites;
}

/** Order by code point, which the default string order is not for astral characters. */
export function compareCodePoints(a: string, b: string): number {
  const [left, right] = [[...a], [...b]];
  for (const [index, character] of left.entries()) {
    const other = right[index];
    if (other === undefined) return 1;
    if (character !== other) return (character.codePointAt(0) ?? 0) - (other.codePointAt(0) ?? 0);
  }
  return left.length - right.length;
}

/** The text at a place. */
export function textAt({ site, start, end }: Place): string {
  return site.block.text.slice(start, end);
}

/** The line of a place in its file, counted from 1. */
export function lineOf({ site, start }: Place): number {
  return site.file.document.positionIn(site.index, start).line + 1;
}
