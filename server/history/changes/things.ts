/** What a build defines, and which thing of one revision is which of the other: renamed things are found by what they say. */
import type { RecordNode } from "../../../grammar/syntax.ts";
import type { Build } from "../../build/build.ts";
import type { NamedDefinition } from "../../build/definitions.ts";
import type { BlockSite, Place } from "../../build/source.ts";
import type { SourcedRecord, TreeNode } from "../../build/tree/node.ts";
import type { ChangedThing } from "./change.ts";

export interface Thing {
  readonly what: ChangedThing;
  /** The path, or the name of its own kind. */
  readonly ref: string;
  readonly title: string | undefined;
  readonly header: Place;
  readonly records: readonly SourcedRecord[];
  /** Undefined of what has a name of its own. */
  readonly node: TreeNode | undefined;
  readonly named: NamedDefinition | undefined;
}

/** The things of both revisions, side by side. */
export interface PairedThings {
  readonly both: readonly { readonly before: Thing; readonly after: Thing }[];
  readonly gone: readonly Thing[];
  readonly come: readonly Thing[];
  readonly renames: Renames;
}

/** What was renamed, by kind and old name. */
export class Renames {
  private readonly paths = new Map<string, string>();

  add({ what, ref }: Pick<Thing, "what" | "ref">, to: string): void {
    this.paths.set(key(what, ref), to);
  }

  /** The later name of what had a name before. */
  of(what: ChangedThing, ref: string): string {
    return this.paths.get(key(what, ref)) ?? ref;
  }
}

/** The vehicle left out: it is there, whatever it is called. */
export function pairThings(before: Build, after: Build): PairedThings {
  const old = thingsOf(before);
  const later = new Map(thingsOf(after).map((thing) => [key(thing.what, thing.ref), thing]));
  const both: { before: Thing; after: Thing }[] = [];
  let gone: Thing[] = [];
  for (const thing of old) {
    const same = later.get(key(thing.what, thing.ref));
    if (same === undefined) gone.push(thing);
    else {
      both.push({ before: thing, after: same });
      later.delete(key(thing.what, thing.ref));
    }
  }
  const renames = new Renames();
  const branches = new Map<string, string>();
  const pair = (thing: Thing, as: Thing) => {
    both.push({ before: thing, after: as });
    later.delete(key(as.what, as.ref));
    renames.add(thing, as.ref);
    if (thing.node !== undefined) learnBranch(branches, thing.ref, as.ref);
  };
  const pairBy = (identity: (thing: Thing) => string | undefined) => {
    const matched = matchUp(gone, [...later.values()], identity);
    for (const [thing, as] of matched) pair(thing, as);
    gone = gone.filter((thing) => !matched.has(thing));
  };
  pairBy(contentOf);
  for (const thing of gone) {
    const moved = thing.node && inBranch(branches, thing.ref);
    const as = moved && later.get(key(thing.what, moved));
    if (as) pair(thing, as);
  }
  gone = gone.filter(({ what, ref }) => renames.of(what, ref) === ref);
  pairBy(({ what, title }) => title && `${what} ${title}`);
  for (const { kind, path, header } of before.standing.gathered.tree.nodes()) {
    const moved = header === undefined && kind === "assembly" ? inBranch(branches, path) : undefined;
    if (moved !== undefined && after.standing.gathered.tree.at(path) === undefined)
      renames.add({ what: kind, ref: path }, moved);
  }
  return { both, gone, come: [...later.values()], renames };
}

function key(what: ChangedThing, ref: string): string {
  return `${what} ${ref}`;
}

function thingsOf({ standing: { gathered } }: Build): Thing[] {
  const nodes = [...gathered.tree.nodes()].flatMap((node): Thing[] => {
    const { kind, path, title, header } = node;
    if (kind === "vehicle" || header === undefined) return [];
    const records = gathered.written.records(node);
    return [{ what: kind, ref: path, title, header, records, node, named: undefined }];
  });
  const named = [...gathered.named.values()].flatMap((ofKind) =>
    [...ofKind.values()].map((definition): Thing => {
      const { kind, name, title, header, records } = definition;
      return { what: kind, ref: name, title, header, records, node: undefined, named: definition };
    }),
  );
  return [...nodes, ...named];
}

/** Pairs those of one identity, in order; where one side has more of it than the other, none. */
function matchUp(
  gone: readonly Thing[],
  come: readonly Thing[],
  identity: (thing: Thing) => string | undefined,
): ReadonlyMap<Thing, Thing> {
  const [old, later] = [grouped(gone, identity), grouped(come, identity)];
  const matched = new Map<Thing, Thing>();
  for (const [id, things] of old) {
    const others = later.get(id) ?? [];
    if (things.length !== others.length) continue;
    for (const [index, thing] of things.entries()) matched.set(thing, others[index] as Thing);
  }
  return matched;
}

function grouped(
  things: readonly Thing[],
  identity: (thing: Thing) => string | undefined,
): ReadonlyMap<string, Thing[]> {
  const groups = new Map<string, Thing[]>();
  for (const thing of things) {
    const id = identity(thing);
    if (id === undefined) continue;
    const group = groups.get(id);
    if (group === undefined) groups.set(id, [thing]);
    else group.push(thing);
  }
  return groups;
}

/** What its own block says but for its name; undefined of a copy, and of a block that says nothing. */
function contentOf({ what, ref, title, header: { site } }: Thing): string | undefined {
  const name = site.block.header?.values.get("name");
  if (name?.kind !== "word" || name.text !== ref) return undefined;
  const records = recordsIn(site).map((item) => textOfItem(site, item));
  return title === undefined && records.length === 0 ? undefined : JSON.stringify([what, title, ...records]);
}

/** The records of a block, as written. */
export function recordsIn({ block }: BlockSite): readonly RecordNode[] {
  return block.items.filter((item) => item.kind === "record");
}

/** A record without its white space and comments. */
export function textOfItem({ block }: BlockSite, { word, contentEnd }: RecordNode): string {
  return spaced(block.text.slice(word.start, contentEnd));
}

export function spaced(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}

/** From `front.left.rotor`, now `nose.left.rotor`, it is learnt that `front` is `nose`. */
function learnBranch(branches: Map<string, string>, from: string, to: string): void {
  const [old, later] = [from.split("."), to.split(".")];
  while (old.length > 0 && later.length > 0) {
    branches.set(old.join("."), later.join("."));
    if (old.pop() !== later.pop()) return;
  }
}

function inBranch(branches: ReadonlyMap<string, string>, path: string): string | undefined {
  const names = path.split(".");
  for (let length = names.length; length > 0; length--) {
    const branch = branches.get(names.slice(0, length).join("."));
    if (branch !== undefined) return [branch, ...names.slice(length)].join(".");
  }
  return undefined;
}
