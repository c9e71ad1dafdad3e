/**
 * `like`: copies of definitions. An assembly's copies its whole branch, any other block's that block alone.
 * References are not rewritten as text: a copied record carries the turns that its references take once resolved.
 */
import type { DefinitionRecord } from "../lowering/definition-record.ts";
import { recordKey } from "../lowering/definition-record.ts";
import { placeAt } from "../source.ts";
import type { SourcedRecord, Turn } from "./node.ts";
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
export const MOST_COPIES = 50_000;

export type LikeFault = { readonly definition: TextDefinition } & (
  | { readonly is: "unknown"; readonly path: string }
  | { readonly is: "cycle"; readonly paths: readonly string[] }
  | { readonly is: "too many" }
);

export interface Expanded {
  readonly definitions: ReadonlyMap<string, TextDefinition>;
  readonly faults: readonly LikeFault[];
}

/** Definitions by path with every `like` carried out. */
export function expandLikes(written: ReadonlyMap<string, TextDefinition>): Expanded {
  return new Expansion(written).run();
}

class Expansion {
  private readonly definitions: Map<string, TextDefinition>;
  private readonly copying: readonly TextDefinition[];
  private readonly done = new Set<string>();
  private readonly faults: LikeFault[] = [];
  private copies = 0;

  constructor(written: ReadonlyMap<string, TextDefinition>) {
    this.definitions = new Map(written);
    this.copying = [...written.values()].filter(({ like }) => like !== undefined);
  }

  run(): Expanded {
    for (const definition of this.copying) this.expand(definition, []);
    return { definitions: this.definitions, faults: this.faults };
  }

  /** Carries out one copy, after those that its source depends on. */
  private expand(definition: TextDefinition, waiting: readonly TextDefinition[]): void {
    if (definition.like === undefined || this.done.has(definition.path)) return;
    if (waiting.includes(definition)) {
      const cycle = waiting.slice(waiting.indexOf(definition)).map(({ path }) => path);
      for (const { path } of waiting.slice(waiting.indexOf(definition))) this.done.add(path);
      this.faults.push({ is: "cycle", definition, paths: [...cycle, definition.path] });
      return;
    }
    const source = definition.like.text;
    if (isWithin(source, definition.path) || isWithin(definition.path, source)) {
      this.done.add(definition.path);
      this.faults.push({ is: "cycle", definition, paths: [definition.path, source] });
      return;
    }
    for (const other of this.copying) {
      const needed = isWithin(other.path, source) || isWithin(source, other.path);
      if (needed && other !== definition) this.expand(other, [...waiting, definition]);
    }
    if (this.done.has(definition.path)) return;
    this.done.add(definition.path);
    this.copy(definition, source);
  }

  private copy(definition: TextDefinition, source: string): void {
    const whole = definition.kind === "assembly";
    const found = [...this.definitions.values()].filter(({ path }) =>
      whole ? isWithin(path, source) : path === source,
    );
    if (found.length === 0) {
      this.faults.push({ is: "unknown", definition, path: source });
      return;
    }
    const turn: Turn = { from: source, to: definition.path };
    for (const original of found) {
      if (++this.copies > MOST_COPIES) {
        this.faults.push({ is: "too many", definition });
        return;
      }
      const path = definition.path + original.path.slice(source.length);
      this.definitions.set(path, copied(original, path, definition, this.definitions.get(path), turn));
    }
  }
}

/** A copy at a path, with the records that a block of its own there says otherwise left out. */
function copied(
  original: TextDefinition,
  path: string,
  copier: TextDefinition,
  own: TextDefinition | undefined,
  turn: Turn,
): TextDefinition {
  const ownKeys = new Set(own?.records.map(({ record }) => recordKey(record)));
  const records = original.records
    .filter(({ record }) => !NEVER_COPIED.has(record.word) && !ownKeys.has(recordKey(record)))
    .map((sourced): SourcedRecord => ({ ...sourced, turns: [...sourced.turns, turn] }));
  return {
    path,
    kind: own === undefined || own === copier ? original.kind : own.kind,
    title: own?.title ?? original.title,
    site: own?.site ?? copier.site,
    header: own?.header ?? placeAt(copier.site, copier.header),
    like: own?.like,
    copyOf: original.path,
    records: [...records, ...(own?.records ?? [])],
    lost: own?.lost ?? [],
  };
}
