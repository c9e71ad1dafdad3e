import type { BlockNode } from "../../grammar/syntax.ts";
import { madeOnce } from "../build/remembered.ts";
import type { BlockSite, Place, SourceFile } from "../build/source.ts";

/** Where the blocks of some places stand in their files: as long as they stand there as they are, so do the places. */
export class SamePlaces {
  private readonly sites: readonly BlockSite[];
  private readonly paths: readonly string[];
  private readonly lines: readonly (number | undefined)[];
  private readonly blocks: readonly BlockNode[];

  constructor(sites: Iterable<BlockSite>) {
    this.sites = [...sites];
    this.paths = this.sites.map(({ file }) => file.path);
    this.lines = this.sites.map(lineOf);
    this.blocks = this.sites.map(({ block }) => block);
  }

  hold(): boolean {
    for (let index = 0; index < this.sites.length; index++) {
      const site = this.sites[index] as BlockSite;
      if (site.block !== this.blocks[index] || lineOf(site) !== this.lines[index]) return false;
      if (site.file.path !== this.paths[index]) return false;
    }
    return true;
  }
}

/** Something at a place, with what is to be seen beside it. */
interface Placed {
  readonly place: Place;
  readonly seeAlso: readonly { readonly place: Place }[];
}

/** The blocks of all places, each once. */
export function sitesOf(all: readonly Placed[]): ReadonlySet<BlockSite> {
  const sites = new Set<BlockSite>();
  for (const { place, seeAlso } of all) {
    sites.add(place.site);
    for (const other of seeAlso) sites.add(other.place.site);
  }
  return sites;
}

function lineOf({ file, index }: BlockSite): number | undefined {
  return file.document.lines[index];
}

/** The same for the places of many complaints: only files that have changed are looked into. */
export class SamePlacesByFile {
  private readonly files: readonly { file: SourceFile; readonly places: SamePlaces }[];

  constructor(all: readonly Placed[]) {
    const byFile = new Map<SourceFile, Set<BlockSite>>();
    for (const site of sitesOf(all)) madeOnce(byFile, site.file, () => new Set()).add(site);
    this.files = [...byFile].map(([file, sites]) => ({ file, places: new SamePlaces(sites) }));
  }

  /** @param now the files as they are, by their paths */
  hold(now: ReadonlyMap<string, SourceFile>): boolean {
    for (const known of this.files) {
      const file = now.get(known.file.path);
      if (file === known.file) continue;
      if (file === undefined || !known.places.hold()) return false;
      known.file = file;
    }
    return true;
  }
}
