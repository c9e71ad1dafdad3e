/**
 * Renaming: wherever a thing is named, also within sets and tails, and with it the copies that have their name from it.
 * The build is read again with the new name before anything is changed: where a line would then mean something else,
 * it is written out in full, or the renaming is refused.
 */
import type { Range, TextEdit } from "vscode-languageserver";
import type { Position } from "../../../grammar/document.ts";
import { RESERVED_NAMES } from "../../../grammar/vocabulary/words.ts";
import type { Build } from "../../build/build.ts";
import type { ReferenceLink } from "../../build/names.ts";
import type { Place, SourceFile } from "../../build/source.ts";
import { lineOf, textAt } from "../../build/source.ts";
import type { TreeNode } from "../../build/tree/node.ts";
import { isWithin } from "../../build/tree/node.ts";
import { readThread } from "../../trade/thread.ts";
import { changedBuild } from "../changed-build.ts";
import { familyOf } from "../names/copy-families.ts";
import type { Occurrence } from "../names/occurrences.ts";
import { occurrenceAt, occurrencesOf, occurrencesWithin, spelling } from "../names/occurrences.ts";
import type { Thing } from "../names/thing.ts";
import { sameThing } from "../names/thing.ts";
import { editOf, rangeOf } from "../to-protocol.ts";
import type { FileView } from "../view.ts";

export interface Refusal {
  readonly refused: string;
}

/** What can be renamed at a place, or why nothing can. */
export function prepareRename(
  view: FileView,
  position: Position,
): { readonly range: Range; readonly placeholder: string } | Refusal | undefined {
  const found = renamable(view, position);
  if (found === undefined || "refused" in found) return found;
  return { range: rangeOf(withoutQuotes(found)), placeholder: spelling(found.things[0] as Thing) };
}

export function rename(
  view: FileView,
  position: Position,
  newName: string,
): ReadonlyMap<SourceFile, readonly TextEdit[]> | Refusal {
  const found = renamable(view, position);
  if (found === undefined) return { refused: "there is no name here that could be changed" };
  if ("refused" in found) return found;
  const { build } = view;
  const things = found.things.flatMap((thing) => withCopies(build, thing));
  const wrong = faultOf(build, things, newName);
  if (wrong !== undefined) return { refused: wrong };
  return new Renaming(build, things, newName).run();
}

/** Findings that a new name could bring where no reference tells. */
const OF_NAMES: ReadonlySet<string> = new Set([
  "unknown-reference",
  "ambiguous-reference",
  "reference-kind",
  "duplicate-name",
  "reserved-name",
  "like-cycle",
]);

type Edits = ReadonlyMap<Place, string>;

class Renaming {
  private readonly build: Build;
  private readonly things: readonly Thing[];
  private readonly newName: string;

  constructor(build: Build, things: readonly Thing[], newName: string) {
    this.build = build;
    this.things = things;
    this.newName = newName;
  }

  run(): ReadonlyMap<SourceFile, readonly TextEdit[]> | Refusal {
    const edits = new Map<Place, string>();
    for (const occurrence of occurrencesOf(this.build, this.things)) {
      const others = occurrence.things.filter((thing) => !this.things.some((own) => sameThing(own, thing)));
      if (others.length > 0) return { refused: this.wouldSplit(occurrence, others) };
      edits.set(withoutQuotes(occurrence), this.newName);
    }
    const misread = this.misread(edits);
    if (misread.length === 0) return this.checked(edits);
    const inFull = this.writtenInFull(edits, misread);
    const [still] = this.misread(inFull);
    return still === undefined ? this.checked(inFull) : { refused: this.wouldMisread(still) };
  }

  /** The edits, unless a name would then be missed, or be there twice. */
  private checked(edits: Edits): ReadonlyMap<SourceFile, readonly TextEdit[]> | Refusal {
    const complained = ({ findings }: Build) => findings.filter(({ code }) => OF_NAMES.has(code));
    const [before, after] = [complained(this.build), complained(changedBuild(this.build, edits))];
    const found = after[before.length];
    return found === undefined
      ? textEdits(edits)
      : { refused: `with ${this.newName}, ${at(found.place)} would bring ${found.code}` };
  }

  /** The references that would mean something else than they did. */
  private misread(edits: Edits): readonly ReferenceLink[] {
    const after = changedBuild(this.build, edits).links;
    return this.build.links.filter((link, index) => {
      const now = after[index];
      const before = [...link.nodes.map(({ path }) => this.renamed(path)), this.renamedOf(link)];
      return [...(now?.nodes.map(({ path }) => path) ?? []), now?.named?.name].join() !== before.join();
    });
  }

  /** A reference that a tail no longer tells is written with its whole path. */
  private writtenInFull(edits: Edits, links: readonly ReferenceLink[]): Edits {
    const full = new Map(edits);
    for (const { place, use } of links) {
      const named =
        occurrencesWithin(this.build, place).findLast(({ name }) => name.is === "in reference")?.things ?? [];
      const [only, another] = named;
      const isSet = use.reference.segments.some(({ is }) => is !== "name");
      if (only?.is !== "node" || another !== undefined || isSet) continue;
      for (const other of full.keys()) if (holds(place, other)) full.delete(other);
      const end = use.member ? `.${use.reference.text.split(".").at(-1)}` : "";
      full.set(place, this.renamed(only.node.path) + end);
    }
    return full;
  }

  /** A path with the new name where an old one stood. */
  private renamed(path: string): string {
    let renamed = path;
    // Longest first: a part below an assembly keeps its own place.
    for (const thing of this.things) {
      if (thing.is !== "node" || !isWithin(path, thing.node.path)) continue;
      const names = renamed.split(".");
      names[thing.node.path.split(".").length - 1] = this.newName;
      renamed = names.join(".");
    }
    return renamed;
  }

  private renamedOf({ named }: ReferenceLink): string | undefined {
    if (named === undefined) return undefined;
    const isRenamed = this.things.some((thing) => thing.is === "named" && thing.definition === named);
    return isRenamed ? this.newName : named.name;
  }

  private wouldSplit({ place }: Occurrence, others: readonly Thing[]): string {
    const names = others.map((thing) => (thing.is === "node" ? thing.node.path : spelling(thing)));
    return `${at(place)} means ${names.join(", ")} too: write out what it means first`;
  }

  private wouldMisread({ place }: ReferenceLink): string {
    return `with ${this.newName}, ${textAt(place)} in ${at(place)} would mean something else`;
  }
}

function renamable(view: FileView, position: Position): Occurrence | Refusal | undefined {
  const at = view.placeAt(position);
  const here = at && occurrenceAt(view, at);
  const thing = here?.things[0];
  if (here === undefined || thing === undefined) return undefined;
  if (thing.is === "function") return { refused: `${thing.name} is a function of the notation` };
  if (thing.is === "node" && thing.node.kind === "vehicle")
    return { refused: "the vehicle is called vehicle wherever it is referred to" };
  return here;
}

/** A thing with all that has its name from it. */
function withCopies(build: Build, thing: Thing): readonly Thing[] {
  if (thing.is === "node") return [...familyOf(build, thing.node)].map((node) => ({ is: "node", node }));
  if (thing.is === "characteristic")
    return [...familyOf(build, thing.node), ...copiesOf(build, thing.node)].map((node) => ({
      ...thing,
      node,
    }));
  return [thing];
}

/** A `part … like` has a name of its own, but the characteristics of the other. */
function copiesOf(build: Build, node: TreeNode): readonly TreeNode[] {
  return [...build.standing.gathered.tree.nodes()].filter(
    (other) => other.copyOf === node.path || node.copyOf === other.path,
  );
}

const NAME = /^[A-Za-z][A-Za-z0-9_]*$/;
const DOTTED = /^[A-Za-z][A-Za-z0-9_]*(?:\.[A-Za-z][A-Za-z0-9_]*)*$/;

/** Why a name cannot be given to some things. */
function faultOf(build: Build, things: readonly Thing[], name: string): string | undefined {
  const [thing] = things;
  if (thing?.is === "order") return name.includes('"') ? "a reference holds no quotation mark" : undefined;
  const isJob = thing?.is === "named" && thing.definition.kind === "job";
  if (!(isJob ? DOTTED : NAME).test(name))
    return `${name || "nothing"} is no name: letters, digits and _, a letter first`;
  if ((RESERVED_NAMES as readonly string[]).includes(name)) return `${name} is a word of the notation`;
  if (!("fault" in readThread(name))) return `${name} reads as a thread`;
  for (const each of things) {
    const taken = takenBy(build, each, name);
    if (taken !== undefined) return taken;
  }
  return undefined;
}

function takenBy(build: Build, thing: Thing, name: string): string | undefined {
  const { gathered, names } = build.standing;
  switch (thing.is) {
    case "node": {
      const path = [...thing.node.path.split(".").slice(0, -1), name].join(".");
      return gathered.tree.at(path) === undefined ? undefined : `there is a ${path} already`;
    }
    case "named": {
      const { kind } = thing.definition;
      const space = kind === "job" || kind === "hold" ? (["job", "hold"] as const) : ([kind] as const);
      const other = space.find((each) => names.named(each, name) !== undefined);
      return other === undefined ? undefined : `there is a ${other} ${name} already`;
    }
    case "characteristic": {
      const records = gathered.written.records(thing.node);
      const isThere = records.some(({ record }) => "name" in record && record.name === name);
      return isThere ? `${thing.node.path} has a ${name} already` : undefined;
    }
    default: {
      const used = [...occurrencesOf(build, [{ is: thing.is, name } as Thing])].some(
        (each) => each.name.defines,
      );
      return used ? `${name} is used already` : undefined;
    }
  }
}

/** The place of a name; of a string what is within its quotation marks. */
function withoutQuotes({ name, place }: Occurrence): Place {
  return name.is === "order" ? { ...place, start: place.start + 1, end: place.end - 1 } : place;
}

function textEdits(edits: Edits): ReadonlyMap<SourceFile, readonly TextEdit[]> {
  const byFile = new Map<SourceFile, TextEdit[]>();
  for (const [place, text] of edits) {
    const { file } = place.site;
    byFile.set(file, [...(byFile.get(file) ?? []), editOf(place, text)]);
  }
  return byFile;
}

function holds(outer: Place, inner: Place): boolean {
  return outer.site === inner.site && outer.start <= inner.start && inner.end <= outer.end;
}

function at(place: Place): string {
  return `${place.site.file.path}:${lineOf(place)}`;
}
