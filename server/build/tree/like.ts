/**
 * `like`: copies of definitions. An assembly's copies its whole branch, any other block's that block alone.
 * References are not rewritten as text: a copied record carries the turns that its references take once resolved.
 *
 * Where several things speak about one path, the nearest wins, record by record: its own block, then that block's own
 * `like`, then the branch copies around it, the innermost first.
 */

import type { BlockWord } from "../../../grammar/syntax.ts";
import { recordEntry } from "../../../grammar/vocabulary/vocabulary.ts";
import type { DefinitionRecord } from "../lowering/definition-record.ts";
import { recordKey } from "../lowering/definition-record.ts";
import type { SourcedRecord, TreeKind, Turn } from "./node.ts";
import { isWithin } from "./node.ts";
import type { TextDefinition } from "./text-definition.ts";

/** What `like` never copies: the history and the stock of the one that it was made from. */
const NEVER_COPIED: ReadonlySet<DefinitionRecord["word"]> = new Set([
  "made",
  "expires",
  "as_found",
  "stock",
  "keep",
]);

/** Copies are capped, so that a chain of copies of copies cannot grow without end. */
const MOST_COPIES = 20_000;
/** And a copy of a copy of a copy is followed no further than this. */
const LONGEST_CHAIN = 500;

export type LikeFault = { readonly definition: TextDefinition } & (
  | { readonly is: "unknown"; readonly path: string }
  /** What is there is of another kind than the block that would be like it. */
  | { readonly is: "kind"; readonly path: string; readonly kind: TreeKind }
  | { readonly is: "cycle"; readonly paths: readonly string[] }
  | { readonly is: "too many" }
);

export interface Expanded {
  /** In the order of definition: what a block copies stands behind it. */
  readonly definitions: ReadonlyMap<string, TextDefinition>;
  readonly faults: readonly LikeFault[];
}

/** Definitions by path with every `like` carried out. */
export function expandLikes(written: ReadonlyMap<string, TextDefinition>): Expanded {
  return new Expansion(written).run();
}

/** One definition carried to a path of the copy. */
interface Copy {
  readonly copier: TextDefinition;
  readonly original: TextDefinition;
  readonly turn: Turn;
}

class Expansion {
  private readonly written: ReadonlyMap<string, TextDefinition>;
  /** Everything so far, copies included. */
  private readonly definitions: Map<string, TextDefinition>;
  private readonly copies = new Map<string, Copy[]>();
  /** The paths that each copier made. */
  private readonly made = new Map<TextDefinition, string[]>();
  private readonly branches = new Branches();
  private readonly copiers: ReadonlyMap<string, TextDefinition>;
  private readonly copierPaths: readonly string[];
  private readonly done = new Set<TextDefinition>();
  /** Those that are waiting for their sources, the first one first. */
  private readonly waiting: TextDefinition[] = [];
  private readonly faults: LikeFault[] = [];
  private count = 0;

  constructor(written: ReadonlyMap<string, TextDefinition>) {
    this.written = written;
    this.definitions = new Map(written);
    const copiers = [...written.values()].filter(({ like }) => like !== undefined);
    this.copiers = new Map(copiers.map((definition) => [definition.path, definition]));
    this.copierPaths = [...this.copiers.keys()].sort();
    for (const path of written.keys()) this.branches.add(path);
  }

  run(): Expanded {
    for (const copier of this.copiers.values()) this.expand(copier);
    return { definitions: this.inOrder(), faults: this.faults };
  }

  /** Carries out one copy, after those that its source depends on. */
  private expand(copier: TextDefinition): void {
    const source = copier.like?.text;
    if (source === undefined || this.done.has(copier)) return;
    const begun = this.waiting.indexOf(copier);
    if (begun >= 0) {
      const round = this.waiting.slice(begun);
      for (const one of round) this.done.add(one);
      this.faults.push({
        is: "cycle",
        definition: copier,
        paths: [...round.map(({ path }) => path), copier.path],
      });
      return;
    }
    if (this.containsItself(copier, source)) {
      this.done.add(copier);
      this.faults.push({ is: "cycle", definition: copier, paths: [copier.path, source] });
      return;
    }
    if (this.waiting.length === LONGEST_CHAIN) {
      this.done.add(copier);
      this.faults.push({ is: "too many", definition: copier });
      return;
    }
    this.waiting.push(copier);
    for (const other of this.needed(copier, source)) this.expand(other);
    this.waiting.pop();
    if (this.done.has(copier)) return;
    this.done.add(copier);
    if (copiesBranch(copier)) this.copyBranch(copier, source);
    else this.copyBlock(copier, source);
  }

  private containsItself(copier: TextDefinition, source: string): boolean {
    if (!copiesBranch(copier)) return source === copier.path;
    return isWithin(source, copier.path) || isWithin(copier.path, source);
  }

  /** The copiers that put something where this one copies from. */
  private *needed(copier: TextDefinition, source: string): Generator<TextDefinition> {
    for (const path of pathAndAbove(source)) {
      const other = this.copiers.get(path);
      if (other !== undefined && (path === source || copiesBranch(other))) yield other;
    }
    if (!copiesBranch(copier)) return;
    for (const path of startingWith(this.copierPaths, `${source}.`)) {
      const other = this.copiers.get(path);
      if (other !== undefined) yield other;
    }
  }

  private copyBranch(copier: TextDefinition, source: string): void {
    if (this.count >= MOST_COPIES) {
      this.faults.push({ is: "too many", definition: copier });
      return;
    }
    const found = [...this.branches.within(source)].flatMap((path) => this.definitions.get(path) ?? []);
    const root = this.definitions.get(source);
    if (found.length === 0) this.faults.push({ is: "unknown", definition: copier, path: source });
    else if (root !== undefined && root.kind !== "assembly" && root.kind !== "part")
      this.faults.push({ is: "kind", definition: copier, path: source, kind: root.kind });
    else
      for (const original of found) {
        if (++this.count > MOST_COPIES) {
          this.faults.push({ is: "too many", definition: copier });
          return;
        }
        this.copy(copier, original, source);
      }
  }

  private copyBlock(copier: TextDefinition, source: string): void {
    const original = this.definitions.get(source);
    if (original === undefined) {
      this.faults.push(
        this.branches.has(source)
          ? { is: "kind", definition: copier, path: source, kind: "assembly" }
          : { is: "unknown", definition: copier, path: source },
      );
    } else if (original.kind !== copier.kind)
      this.faults.push({ is: "kind", definition: copier, path: source, kind: original.kind });
    else this.copy(copier, original, source);
  }

  private copy(copier: TextDefinition, original: TextDefinition, source: string): void {
    const path = copier.path + original.path.slice(source.length);
    const own = this.written.get(path);
    if (own !== undefined && own !== copier && own.kind !== original.kind) {
      this.faults.push({ is: "kind", definition: own, path: original.path, kind: original.kind });
      return;
    }
    const copies = [
      ...(this.copies.get(path) ?? []),
      { copier, original, turn: { from: source, to: copier.path } },
    ].sort((a, b) => b.copier.path.length - a.copier.path.length);
    this.copies.set(path, copies);
    this.definitions.set(path, combined(path, own, copies));
    this.branches.add(path);
    const made = this.made.get(copier);
    if (made === undefined) this.made.set(copier, [path]);
    else made.push(path);
  }

  private inOrder(): Map<string, TextDefinition> {
    const ordered = new Map<string, TextDefinition>();
    for (const { path } of this.written.values()) {
      const definition = this.definitions.get(path) as TextDefinition;
      ordered.set(path, definition);
      for (const copy of this.made.get(this.written.get(path) as TextDefinition) ?? []) {
        if (!this.written.has(copy) && !ordered.has(copy))
          ordered.set(copy, this.definitions.get(copy) as TextDefinition);
      }
    }
    return ordered;
  }
}

function copiesBranch({ kind }: TextDefinition): boolean {
  return kind === "assembly";
}

/** What is known of a path: its own block, then each copy that has more to say, the nearest first. */
function combined(path: string, own: TextDefinition | undefined, copies: readonly Copy[]): TextDefinition {
  const [nearest] = copies as readonly [Copy, ...Copy[]];
  // An assembly's line that says no more than `like` is what it copies: an assembly, or a part with parts in it.
  const kind = own === undefined || own === nearest.copier ? nearest.original.kind : own.kind;
  const said = new Set(own?.records.map(({ record }) => recordKey(record)));
  const copied: SourcedRecord[] = [];
  for (const { original, turn } of copies) {
    const more = original.records.filter(
      ({ record }) => isCopied(record) && belongsTo(kind, record) && !said.has(recordKey(record)),
    );
    for (const sourced of more) copied.push({ ...sourced, turns: sourced.turns.concat(turn) });
    for (const { record } of more) said.add(recordKey(record));
  }
  return {
    path,
    kind,
    title: own?.title ?? nearest.original.title,
    site: own?.site ?? nearest.copier.site,
    header: own?.header ?? nearest.copier.header,
    like: own?.like,
    copyOf: nearest.original.path,
    records: [...copied, ...(own?.records ?? [])],
    // What could not be read of the original is unknown of the copy too.
    lost: [...copies.flatMap(({ original }) => original.lost), ...(own?.lost ?? [])],
  };
}

function isCopied(record: DefinitionRecord): boolean {
  const { word } = record.word === "default" ? record.record : record;
  return !NEVER_COPIED.has(word);
}

function belongsTo(kind: TextDefinition["kind"], { word }: DefinitionRecord): boolean {
  return recordEntry(kind satisfies BlockWord, word) !== undefined;
}

/** Which paths lie below which, those without a block of their own included. */
class Branches {
  private readonly children = new Map<string, Set<string>>();

  add(path: string): void {
    let child = path;
    for (const above of [...pathAndAbove(path)].slice(1)) {
      const known = this.children.get(above);
      if (known?.has(child)) return;
      if (known === undefined) this.children.set(above, new Set([child]));
      else known.add(child);
      child = above;
    }
  }

  /** True where something lies below a path. */
  has(path: string): boolean {
    return this.children.has(path);
  }

  /** The path and everything below it. */
  *within(path: string): Generator<string> {
    yield path;
    for (const child of this.children.get(path) ?? []) yield* this.within(child);
  }
}

/** `a.b.c`, `a.b`, `a`. */
function* pathAndAbove(path: string): Generator<string> {
  for (let end = path.length; end > 0; end = path.lastIndexOf(".", end - 1)) yield path.slice(0, end);
}

/** Those of sorted texts that begin with another. */
function* startingWith(sorted: readonly string[], beginning: string): Generator<string> {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] as string) < beginning) low = middle + 1;
    else high = middle;
  }
  for (let at = low; sorted[at]?.startsWith(beginning) === true; at++) yield sorted[at] as string;
}
