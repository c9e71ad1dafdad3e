/** Mends for a reference that leads to nothing: define what it names. */
import { withArticle } from "../../../grammar/article.ts";
import type { ReferenceKind } from "../../../grammar/vocabulary/shape.ts";
import type { Build } from "../../build/build.ts";
import type { Finding } from "../../build/finding.ts";
import type { BlockSite, Place } from "../../build/source.ts";
import type { Fix } from "../rule.ts";
import { list } from "../words.ts";

type UnknownReference = Finding<"unknown-reference">;

const PATH = /^[A-Za-z][A-Za-z0-9_]*(?:\.[A-Za-z][A-Za-z0-9_]*)*$/;
/** Snags are made by a fact, not by a block. */
const NOT_DEFINED: ReadonlySet<ReferenceKind> = new Set(["snag"]);
const KINDS_OF_TREE: readonly ReferenceKind[] = ["part", "joint", "system", "circuit"];
const OTHERS_OF_TREE: ReadonlySet<ReferenceKind> = new Set(["joint", "system", "circuit"]);

/** One mend for each kind that the place wants. */
export function definingFixes({ data, place }: UnknownReference, build: Build): Fix[] {
  if (!PATH.test(data.text)) return [];
  return kindsToDefine(data.kinds).map((kind) => ({
    title: `Define the ${kind} ${data.text}`,
    sure: false,
    edits: [definition(kind, data.text, endOfNearestFile(build, kind, data.text) ?? endOf(place.site))],
  }));
}

/**
 * An assembly is wanted only where nothing else will do. A place that takes every kind of the tree says nothing of the
 * kind: a part is offered there, as most things are.
 */
function kindsToDefine(kinds: readonly ReferenceKind[]): readonly ReferenceKind[] {
  const wanted = kinds.filter(
    (kind) => !NOT_DEFINED.has(kind) && (kind !== "assembly" || kinds.length === 1),
  );
  const isAnyOfTree = KINDS_OF_TREE.every((kind) => wanted.includes(kind));
  return isAnyOfTree ? wanted.filter((kind) => !OTHERS_OF_TREE.has(kind)) : wanted;
}

/** `: expected hub or hubs`, or what kind of name the place takes; nothing where that is no kind of thing. */
export function expectedNames({ kinds, nearest }: UnknownReference["data"]): string {
  if (kinds.length === 0 && nearest.length === 0) return "";
  if (nearest.length > 0) return `: expected ${list(nearest, "or")}`;
  const wanted = kinds.length > 1 ? kinds.filter((kind) => kind !== "assembly") : kinds;
  return `: expected the name of ${list(wanted.map(withArticle), "or")}`;
}

function definition(kind: ReferenceKind, name: string, place: Place): { place: Place; text: string } {
  const { text } = place.site.block;
  const gap = text.endsWith("\n\n") || text === "" ? "" : text.endsWith("\n") ? "\n" : "\n\n";
  return { place, text: `${gap}${kind} ${name} "${titleOf(name)}"\n` };
}

/** A title to begin with: the last name of the path, as words. */
function titleOf(path: string): string {
  const words = path.slice(path.lastIndexOf(".") + 1).replaceAll("_", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/**
 * The end of the file that defines the thing whose path has most in common with the new one; of several, the last that
 * defines one of the same kind. Undefined where nothing is defined yet.
 */
function endOfNearestFile(build: Build, kind: ReferenceKind, path: string): Place | undefined {
  let best: { readonly site: BlockSite; readonly score: number } | undefined;
  for (const site of build.sites) {
    const { header } = site.block;
    if (header?.block === undefined || header.block === "day") continue;
    const name = header.values.get("name");
    const shared = name?.kind === "word" ? sharedSegments(name.text, path) : 0;
    const score = 2 * shared + (header.block === kind ? 1 : 0);
    if (best === undefined || score >= best.score) best = { site, score };
  }
  const file = best?.site.file;
  const last = file && build.sites.findLast((site) => site.file === file);
  return last && endOf(last);
}

function sharedSegments(one: string, other: string): number {
  const [left, right] = [one.split("."), other.split(".")];
  const differs = left.findIndex((segment, index) => segment !== right[index]);
  return differs < 0 ? left.length : differs;
}

function endOf(site: BlockSite): Place {
  const end = site.block.text.length;
  return { site, start: end, end };
}
