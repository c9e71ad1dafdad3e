/** The lines of a build with every reference in full, so that lines which mean the same read the same. */
import type { Build } from "../../build/build.ts";
import type { ReferenceLink } from "../../build/names.ts";
import type { BlockSite, Place } from "../../build/source.ts";
import type { ChangedThing } from "./change.ts";
import { spaced } from "./things.ts";

export class Wording {
  private readonly bySite = new Map<BlockSite, ReferenceLink[]>();
  private readonly rename: (what: ChangedThing, ref: string) => string;

  /** @param rename the name by which a thing of this build is known in the other */
  constructor({ links }: Build, rename: (what: ChangedThing, ref: string) => string) {
    this.rename = rename;
    for (const link of links) {
      const of = this.bySite.get(link.place.site);
      if (of === undefined) this.bySite.set(link.place.site, [link]);
      else of.push(link);
    }
  }

  /** The text of a place, references resolved and renamed, white space and comments made one space. */
  of({ site, start, end }: Place): string {
    const { text } = site.block;
    let said = "";
    let at = start;
    for (const link of this.linksIn(site, start, end)) {
      if (link.place.start < at) continue;
      const refs = this.refsOf(link);
      if (refs.length === 0) continue;
      said += `${text.slice(at, link.place.start)}${refs.join("+")}${memberOf(link)}`;
      at = link.place.end;
    }
    return spaced(said + text.slice(at, end));
  }

  /** What the first reference of a line leads to, under the names of the other build. */
  subjectOf({ site, start, end }: Place): readonly string[] {
    const [first] = this.linksIn(site, start, end);
    return first === undefined ? [] : this.refsOf(first);
  }

  /** Where the first reference of a line stands. */
  subjectAt({ site, start, end }: Place): Place | undefined {
    return this.linksIn(site, start, end)[0]?.place;
  }

  private linksIn(site: BlockSite, start: number, end: number): readonly ReferenceLink[] {
    return (this.bySite.get(site) ?? [])
      .filter(({ place }) => place.start >= start && place.end <= end)
      .sort((a, b) => a.place.start - b.place.start);
  }

  private refsOf({ nodes, named }: ReferenceLink): readonly string[] {
    if (named !== undefined) return [this.rename(named.kind, named.name)];
    return nodes.map(({ kind, path }) => this.rename(kind, path));
  }
}

/** `front.hub.end_float` reads as `front.hub end_float`, which may be written too. */
function memberOf({ use: { member, reference } }: ReferenceLink): string {
  return member ? ` ${reference.text.slice(reference.text.lastIndexOf(".") + 1)}` : "";
}
