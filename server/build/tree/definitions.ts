/**
 * What is defined at one moment: the blocks as written, `changed:` in force, and `default:` of the assemblies above
 * for what a thing says nothing about itself.
 */
import { recordEntry } from "../../../grammar/vocabulary/vocabulary.ts";
import type { RecordWord } from "../lowering/definition-record.ts";
import { recordKey } from "../lowering/definition-record.ts";
import type { SourcedRecord, TreeNode } from "./node.ts";
import { below } from "./node.ts";

/** A record of a thing that is different from a day on. */
export interface Change {
  readonly node: TreeNode;
  readonly record: SourcedRecord;
}

type Effective = ReadonlyMap<RecordWord, readonly SourcedRecord[]>;

/** The definitions in force from one change to the next. */
export class Definitions {
  private readonly history: History;
  /** How many days of changes have been carried out. */
  private readonly age: number;
  private readonly earliest = new Map<string, Definitions>();

  /** Without a history: the definitions as they are written in the blocks. */
  constructor(history = new History()) {
    this.history = history;
    this.age = history.moments.length;
    history.moments.push(this);
  }

  /** These definitions with the changes of one day carried out, all at once. */
  with(changes: readonly Change[]): Definitions {
    // Days follow one another; from an earlier day another way can be taken, with a history of its own.
    const isNewest = this.age === this.history.moments.length - 1;
    const history = isNewest ? this.history : this.history.upTo(this.age);
    history.change(changes);
    return new Definitions(history);
  }

  /** Every record of a word, in order; empty where nothing is said. */
  all<W extends RecordWord>(node: TreeNode, word: W): readonly SourcedRecord<W>[] {
    return (this.history.effective(node, this.age).get(word) ?? NONE) as readonly SourcedRecord<W>[];
  }

  /** The record of a word that counts: the last one. */
  one<W extends RecordWord>(node: TreeNode, word: W): SourcedRecord<W> | undefined {
    return this.all(node, word).at(-1);
  }

  /** The earliest definitions that say the same of these words: what is derived from them alone can be kept there. */
  since(words: readonly RecordWord[]): Definitions {
    const key = words.join();
    const { moments, changedWords } = this.history;
    let age = this.age;
    let earliest = this.earliest.get(key);
    while (earliest === undefined) {
      const changed = changedWords[age - 1];
      if (changed === undefined || words.some((word) => changed.has(word))) earliest = moments[age] ?? this;
      else earliest = moments[--age]?.earliest.get(key);
    }
    this.earliest.set(key, earliest);
    return earliest;
  }
}

const NONE: readonly SourcedRecord[] = [];

/** Something that holds from an age on, until the next. */
interface Version<T> {
  readonly age: number;
  readonly value: T;
}

/** Everything that was ever defined, by thing and age, so that a change costs no more than what it changes. */
class History {
  readonly moments: Definitions[] = [];
  /** The words that each change was about. */
  readonly changedWords: ReadonlySet<RecordWord>[] = [];
  private readonly written = new Map<TreeNode, Version<readonly SourcedRecord[]>[]>();
  /** What counts of the things that a change touched, found when it is first asked for. */
  private readonly counting = new Map<TreeNode, Version<{ found: Effective | undefined }>[]>();

  /** The same history, of which nothing later than an age is known. */
  upTo(age: number): History {
    const earlier = new History();
    earlier.moments.push(...this.moments.slice(0, age + 1));
    earlier.changedWords.push(...this.changedWords.slice(0, age));
    for (const [node, versions] of this.written)
      earlier.written.set(
        node,
        versions.filter((version) => version.age <= age),
      );
    for (const [node, versions] of this.counting)
      earlier.counting.set(
        node,
        versions.filter((version) => version.age <= age),
      );
    return earlier;
  }

  change(changes: readonly Change[]): void {
    const age = this.moments.length;
    for (const [node, records] of recordsAfter(changes, (node) => this.recordsOf(node, age)))
      addVersion(this.written, node, { age, value: records });
    for (const node of new Set(changes.flatMap(touchedBy)))
      addVersion(this.counting, node, { age, value: { found: undefined } });
    this.changedWords.push(new Set(changes.map(({ record: { record } }) => changedWord(record))));
  }

  effective(node: TreeNode, age: number): Effective {
    const versions = this.counting.get(node);
    const newest = versions?.at(-1);
    const version = newest !== undefined && newest.age > age ? versionAt(versions, age) : newest;
    if (version === undefined) return asWritten.get(node) ?? this.find(node, 0);
    version.value.found ??= this.find(node, version.age);
    return version.value.found;
  }

  /** What the thing's own block says at an age, changes included, defaults left out. */
  private recordsOf(node: TreeNode, age: number): readonly SourcedRecord[] {
    return versionAt(this.written.get(node), age)?.value ?? node.records;
  }

  private find(node: TreeNode, age: number): Effective {
    const found = this.findAfresh(node, age);
    if (age === 0) asWritten.set(node, found);
    return found;
  }

  private findAfresh(node: TreeNode, age: number): Effective {
    const records = [...this.recordsOf(node, age)];
    const said = new Set(records.map(({ record }) => recordKey(record)));
    for (const fallback of this.defaultsAbove(node, age)) {
      if (!said.has(recordKey(fallback.record))) records.push(fallback);
    }
    const grouped = new Map<RecordWord, SourcedRecord[]>();
    for (const sourced of records) {
      const same = grouped.get(sourced.record.word);
      if (same === undefined) grouped.set(sourced.record.word, [sourced]);
      else same.push(sourced);
    }
    return grouped;
  }

  /** The defaults that reach a thing, of the nearest assembly that has one for each word and name. */
  private defaultsAbove(node: TreeNode, age: number): SourcedRecord[] {
    const found = new Map<string, SourcedRecord[]>();
    for (let above = node.parent; above !== undefined; above = above.parent) {
      const here = new Map<string, SourcedRecord[]>();
      for (const sourced of this.recordsOf(above, age)) {
        if (sourced.record.word !== "default") continue;
        const { record } = sourced.record;
        if (node.kind === "vehicle" || recordEntry(node.kind, record.word) === undefined) continue;
        const key = recordKey(record);
        here.set(key, [...(here.get(key) ?? []), { ...sourced, record }]);
      }
      for (const [key, records] of here) if (!found.has(key)) found.set(key, records);
    }
    return [...found.values()].flat();
  }
}

/** What counts of a thing before anything is changed: it depends on the thing alone. */
const asWritten = new WeakMap<TreeNode, Effective>();

/** The newest version that is no younger than an age. */
function versionAt<T>(versions: readonly Version<T>[] | undefined, age: number): Version<T> | undefined {
  return versions?.findLast((version) => version.age <= age);
}

function addVersion<T>(versions: Map<TreeNode, Version<T>[]>, node: TreeNode, version: Version<T>): void {
  const known = versions.get(node);
  if (known === undefined) versions.set(node, [version]);
  else known.push(version);
}

/** The records of each changed thing: all of a changed word and name give way to those of the day. */
function recordsAfter(
  changes: readonly Change[],
  before: (node: TreeNode) => readonly SourcedRecord[],
): ReadonlyMap<TreeNode, readonly SourcedRecord[]> {
  const after = new Map<TreeNode, readonly SourcedRecord[]>();
  const replaced = new Set<string>();
  for (const { node, record } of changes) {
    const key = recordKey(record.record);
    const others = after.get(node) ?? before(node);
    const first = !replaced.has(`${node.path} ${key}`);
    replaced.add(`${node.path} ${key}`);
    const kept = first ? others.filter((other) => recordKey(other.record) !== key) : others;
    after.set(node, [...kept, record]);
  }
  return after;
}

/** Of a changed default everything below the assembly, else the thing alone. */
function touchedBy({ node, record: { record } }: Change): readonly TreeNode[] {
  return record.word === "default" ? [node, ...below(node)] : [node];
}

function changedWord(record: SourcedRecord["record"]): RecordWord {
  return record.word === "default" ? record.record.word : record.word;
}
