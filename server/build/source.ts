/** Where things stand: files, blocks, and stretches of them. */
import type { Document } from "../../grammar/document.ts";
import type { BlockNode, Span } from "../../grammar/syntax.ts";
import { KeptAlong } from "./kept-along.ts";
import { sharedEnds } from "./remembered.ts";

/** One `.cotter` file of a build, by its path relative to the build's folder, with `/`. */
export interface SourceFile {
  readonly path: string;
  readonly document: Document;
}

/**
 * A block in its file. Trees are relative to their block, so a place needs both. A site is a handle: it stays the same
 * while its block does, or is the one that is being written, and tells where the block stands in the newest text of its
 * file (`fileAfter`).
 */
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

/** Files in the order of definition: by code point of their path. */
export function inOrder(files: readonly SourceFile[]): readonly SourceFile[] {
  return [...files].sort((a, b) => compareCodePoints(a.path, b.path));
}

type MovingSite = { -readonly [K in keyof BlockSite]: BlockSite[K] };

/** Sites stay the same as long as their file does: what is derived from them can be kept with them. */
const remembered = new WeakMap<SourceFile, readonly MovingSite[]>();

/** The blocks of a file, in the order of its lines. */
export function sitesIn(file: SourceFile): readonly BlockSite[] {
  const known = remembered.get(file);
  if (known !== undefined) return known;
  const sites = file.document.blocks.map((block, index): MovingSite => ({ file, index, block }));
  remembered.set(file, sites);
  return sites;
}

/** What stays the same while a file is edited, by its texts. */
const stems = new WeakMap<SourceFile, object>();

/** The same object for all texts that a file has one after the other (`fileAfter`): what is kept of the last is found by it. */
export function stemOf(file: SourceFile): object {
  const stem = stems.get(file) ?? {};
  stems.set(file, stem);
  return stem;
}

/** Something of each block of a file, in the order of its lines: of those that an edit leaves alone it is not made again. */
export class OfBlocks<Result> {
  private readonly kept = new KeptAlong<Result>();

  /** @param inputs what all of them are made from besides their blocks */
  of(file: SourceFile, inputs: readonly unknown[], make: (site: BlockSite) => Result): readonly Result[] {
    const sites = sitesIn(file);
    return this.kept.of(stemOf(file), inputs, [sites, file.document.blocks], (index) =>
      make(sites[index] as BlockSite),
    );
  }
}

/**
 * A file with its text as it is after an edit. The blocks that the edit left alone keep their sites, and so all that is
 * kept with these. So does the one day or thing of the tree that was edited, for the sake of its lines above the edit, which
 * are as they were: what is kept with a site is kept for its block. The sites go over to the new text: what was derived from
 * the old one shows where its lines are now.
 */
export function fileAfter(before: SourceFile, document: Document): SourceFile {
  const file = { path: before.path, document };
  stems.set(file, stemOf(before));
  const sites = remembered.get(before);
  if (sites === undefined) return file;
  remembered.delete(before);
  const { blocks } = document;
  const { start, end } = sharedEnds(sites, blocks, (then, now) => sites[then]?.block === blocks[now]);
  const isOne = sites.length === start + 1 + end && blocks.length === start + 1 + end;
  const stays = isOne && isWrittenOn(sites[start]?.block, blocks[start]) ? start : -1;
  const ofFile = blocks.map((block, index): MovingSite => {
    const isBefore = index < start || index === stays;
    const old = isBefore ? index : index < blocks.length - end ? -1 : index - blocks.length + sites.length;
    const site = sites[old];
    if (site === undefined) return { file, index, block };
    site.file = file;
    site.index = index;
    site.block = block;
    return site;
  });
  remembered.set(file, ofFile);
  return file;
}

/** Blocks that someone writes in for a while, line by line. */
const WRITTEN_ON: ReadonlySet<string> = new Set(["day", "assembly", "part", "joint", "system", "circuit"]);

function isWrittenOn(before: BlockNode | undefined, now: BlockNode | undefined): boolean {
  const word = now?.header?.block;
  return word !== undefined && WRITTEN_ON.has(word) && before?.header?.block === word;
}

/** Order by code point, which the default string order is not for astral characters. */
function compareCodePoints(a: string, b: string): number {
  const length = Math.min(a.length, b.length);
  for (let index = 0; index < length; index++) {
    const [one, other] = [a.charCodeAt(index), b.charCodeAt(index)];
    if (one !== other) return inCodePoints(one) - inCodePoints(other);
  }
  return a.length - b.length;
}

/** A code unit as high as it is among code points: surrogates stand for those above all others. */
function inCodePoints(unit: number): number {
  return unit >= 0xd800 && unit <= 0xdfff ? unit + 0x10000 : unit;
}

/** The text at a place. */
export function textAt({ site, start, end }: Place): string {
  return site.block.text.slice(start, end);
}

/** The line of a place in its file, counted from 1. */
export function lineOf({ site, start }: Place): number {
  return site.file.document.positionIn(site.index, start).line + 1;
}
