/** Where things are named: at a cursor, in a file, in a whole build. */
import type { Build } from "../../build/build.ts";
import type { BlockSite, Place } from "../../build/source.ts";
import { placeAt } from "../../build/source.ts";
import { touches } from "../text/inner-nodes.ts";
import type { BlockPlace, FileView } from "../view.ts";
import { meaningOf } from "./meaning.ts";
import type { Thing } from "./thing.ts";
import { sameThing } from "./thing.ts";
import type { WrittenName } from "./written-names.ts";
import { writtenNames } from "./written-names.ts";

/** A name in the text, and what it stands for. */
export interface Occurrence {
  readonly name: WrittenName;
  readonly place: Place;
  readonly things: readonly Thing[];
}

/** The name at a place, if what it stands for is known. */
export function occurrenceAt(view: FileView, at: BlockPlace): Occurrence | undefined {
  const site = siteAt(view, at);
  for (const name of writtenNames(at.block)) {
    if (!touches(name, at.offset)) continue;
    const things = meaningOf(view.build, site, name);
    if (things.length > 0) return { name, place: placeAt(site, name), things };
  }
  return undefined;
}

/** The block that a place lies in, in its file. */
export function siteAt({ file }: FileView, { index, block }: BlockPlace): BlockSite {
  return { file, index, block };
}

/** Every name in the blocks that stands for one of some things, in the order of the text. */
export function* occurrencesOf(
  build: Build,
  things: readonly Thing[],
  sites: Iterable<BlockSite> = build.sites,
): Generator<Occurrence> {
  const texts = new Set(things.map(spelling));
  for (const site of sites) {
    const names = writtenNames(site.block).filter(({ is, text }) => is === "vehicle" || texts.has(text));
    for (const name of [...names].sort((a, b) => a.start - b.start)) {
      const meant = meaningOf(build, site, name);
      if (meant.some((thing) => things.some((wanted) => sameThing(thing, wanted))))
        yield { name, place: placeAt(site, name), things: meant };
    }
  }
}

/** The names within a stretch of a block, in the order of the text. */
export function occurrencesWithin(build: Build, { site, start, end }: Place): readonly Occurrence[] {
  return writtenNames(site.block)
    .filter((name) => start <= name.start && name.end <= end)
    .sort((a, b) => a.start - b.start)
    .map((name) => ({ name, place: placeAt(site, name), things: meaningOf(build, site, name) }));
}

/** How a thing is spelt wherever it is named. */
export function spelling(thing: Thing): string {
  switch (thing.is) {
    case "node":
      return thing.node.path.slice(thing.node.path.lastIndexOf(".") + 1);
    case "named":
      return thing.definition.name;
    default:
      return thing.name;
  }
}
