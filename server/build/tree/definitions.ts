/**
 * What is defined at one moment: the blocks as written, `changed:` in force, and `default:` of the assemblies above
 * for what a thing says nothing about itself.
 */
import type { RecordWord } from "../lowering/definition-record.ts";
import { recordKey } from "../lowering/definition-record.ts";
import type { Aspect, AspectSet } from "./aspect.ts";
import type { SourcedRecord, TreeNode } from "./node.ts";
import { below } from "./node.ts";
import type { Counting, Written } from "./written.ts";
import { counted } from "./written.ts";

/** A record of a thing that is different from a day on. */
export interface Change {
  readonly node: TreeNode;
  readonly record: SourcedRecord;
}

/** What is defined at one moment, for those who ask. */
export interface Definitions {
  /** Every record of a word, in order; empty where nothing is said. */
  all: <W extends RecordWord>(node: TreeNode, word: W) => readonly SourcedRecord<W>[];
  /** The record of a word that counts: the last one. */
  one: <W extends RecordWord>(node: TreeNode, word: W) => SourcedRecord<W> | undefined;
  /** The same as the blocks say it, whatever the diary has changed. */
  asWritten: <W extends RecordWord>(node: TreeNode, word: W) => SourcedRecord<W> | undefined;
  /** All that counts of a thing: the same object for as long as it is the same. */
  counting: (node: TreeNode) => Counting;
  /** The names that a thing's block gives to what can be measured of it, whatever the diary has changed. */
  characteristics: (node: TreeNode) => readonly string[];
  /** The words of a thing's lines that could not be read. */
  unread: (node: TreeNode) => readonly string[];
  /** The same object for all definitions that say the same of these: what is derived from them alone can be kept there. */
  since: (aspects: AspectSet) => object;
  /** The same object for as long as a thing says the same of these; it may be another one although it does. */
  ofThing: (node: TreeNode, aspects: AspectSet) => object;
  /** The same object for as long as nothing is changed in the diary, whatever someone writes in the blocks. */
  readonly moment: object;
}

/** The definitions in force from one change to the next. */
export class DefinitionsInForce implements Definitions {
  private readonly history: History;
  /** How many days of changes have been carried out. */
  private readonly age: number;
  private readonly tokens: Map<AspectSet, object>;
  readonly moment: object;

  private constructor(history: History, moment = {}, tokens = new Map<AspectSet, object>()) {
    this.history = history;
    this.age = history.moments.length;
    this.moment = moment;
    this.tokens = tokens;
    history.moments.push(this);
  }

  /** The definitions as they are written in the blocks. */
  static of(written: Written): DefinitionsInForce {
    return new DefinitionsInForce(new History(written));
  }

  /** These definitions with the changes of one day carried out, all at once: the same as before where that has been done. */
  with(changes: readonly Change[]): DefinitionsInForce {
    const done = this.history.changes[this.age];
    if (done !== undefined && isSameChange(done, changes))
      return this.history.moments[this.age + 1] as DefinitionsInForce;
    // Days follow one another; from an earlier day another way can be taken, with a history of its own.
    const isNewest = this.age === this.history.moments.length - 1;
    const history = isNewest ? this.history : this.history.upTo(this.age);
    history.change(changes);
    return new DefinitionsInForce(history);
  }

  /**
   * The same changes carried out on other blocks of the same tree.
   *
   * @param differences what the blocks say otherwise
   * @returns undefined where a change is about one of those things
   */
  on(
    written: Written,
    differences: ReadonlyMap<TreeNode, ReadonlySet<Aspect>>,
  ): DefinitionsInForce | undefined {
    const history = this.history.on(written, differences.keys());
    if (history === undefined) return undefined;
    const aspects = new Set([...differences.values()].flatMap((each) => [...each]));
    for (const { moment, tokens } of this.history.moments) {
      const still = [...tokens].filter(([set]) => !set.hasAnyOf(aspects));
      new DefinitionsInForce(history, moment, new Map(still));
    }
    return history.moments[this.age];
  }

  /** The definitions of another moment of the same changes. */
  at(moment: object): DefinitionsInForce | undefined {
    return this.history.moments.find((one) => one.moment === moment);
  }

  /** These definitions before any of the changes. */
  get first(): DefinitionsInForce {
    return this.history.moments[0] as DefinitionsInForce;
  }

  all<W extends RecordWord>(node: TreeNode, word: W): readonly SourcedRecord<W>[] {
    return (this.counting(node).records.get(word) ?? NONE) as readonly SourcedRecord<W>[];
  }

  one<W extends RecordWord>(node: TreeNode, word: W): SourcedRecord<W> | undefined {
    return this.all(node, word).at(-1);
  }

  asWritten<W extends RecordWord>(node: TreeNode, word: W): SourcedRecord<W> | undefined {
    const records = this.history.written.counting(node).records.get(word);
    return records?.at(-1) as SourcedRecord<W> | undefined;
  }

  unread(node: TreeNode): readonly string[] {
    return this.counting(node).unread;
  }

  counting(node: TreeNode): Counting {
    return this.history.counting(node, this.age);
  }

  characteristics(node: TreeNode): readonly string[] {
    return this.history.written.characteristics(node);
  }

  ofThing(node: TreeNode): object {
    return this.counting(node);
  }

  since(aspects: AspectSet): object {
    const { moments, changes } = this.history;
    let age = this.age;
    let token = this.tokens.get(aspects);
    while (token === undefined) {
      const changed = changes[age - 1];
      if (changed === undefined || aspects.hasAnyOf(wordsOf(changed))) {
        token = {};
        moments[age]?.tokens.set(aspects, token);
      } else token = moments[--age]?.tokens.get(aspects);
    }
    this.tokens.set(aspects, token);
    return token;
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
  readonly written: Written;
  readonly moments: DefinitionsInForce[] = [];
  /** What was changed from one moment to the next. */
  readonly changes: (readonly Change[])[] = [];
  private readonly records = new Map<TreeNode, Version<readonly SourcedRecord[]>[]>();
  /** What counts of the things that a change touched, found when it is first asked for. */
  private readonly touched = new Map<TreeNode, Version<{ found: Counting | undefined }>[]>();

  constructor(written: Written) {
    this.written = written;
  }

  /** The same history, of which nothing later than an age is known. */
  upTo(age: number): History {
    const earlier = this.copy(this.written, age);
    earlier.moments.push(...this.moments.slice(0, age + 1));
    return earlier;
  }

  /** The same history of other blocks; undefined where a change has touched something that they say otherwise. */
  on(written: Written, others: Iterable<TreeNode>): History | undefined {
    for (const node of others) if (this.touched.has(node)) return undefined;
    return this.copy(written, this.moments.length);
  }

  private copy(written: Written, age: number): History {
    const copy = new History(written);
    copy.changes.push(...this.changes.slice(0, age));
    for (const [node, versions] of this.records) copy.records.set(node, versionsUpTo(versions, age));
    for (const [node, versions] of this.touched) copy.touched.set(node, versionsUpTo(versions, age));
    return copy;
  }

  change(changes: readonly Change[]): void {
    const age = this.moments.length;
    for (const [node, records] of recordsAfter(changes, (node) => this.recordsOf(node, age)))
      addVersion(this.records, node, { age, value: records });
    for (const node of new Set(changes.flatMap(touchedBy)))
      addVersion(this.touched, node, { age, value: { found: undefined } });
    this.changes.push(changes);
  }

  counting(node: TreeNode, age: number): Counting {
    const versions = this.touched.get(node);
    if (versions === undefined) return this.written.counting(node);
    const newest = versions.at(-1);
    const version = newest !== undefined && newest.age > age ? versionAt(versions, age) : newest;
    if (version === undefined) return this.written.counting(node);
    version.value.found ??= this.find(node, version.age);
    return version.value.found;
  }

  /** What the thing's own block says at an age, changes included, defaults left out. */
  private recordsOf(node: TreeNode, age: number): readonly SourcedRecord[] {
    return versionAt(this.records.get(node), age)?.value ?? this.written.records(node);
  }

  private find(node: TreeNode, age: number): Counting {
    const { unread } = this.written.counting(node);
    return counted(node, this.recordsOf(node, age), unread, (above) => this.recordsOf(above, age));
  }
}

/** The newest version that is no younger than an age. */
function versionAt<T>(versions: readonly Version<T>[] | undefined, age: number): Version<T> | undefined {
  return versions?.findLast((version) => version.age <= age);
}

function versionsUpTo<T>(versions: readonly Version<T>[], age: number): Version<T>[] {
  return versions.filter((version) => version.age <= age);
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

function wordsOf(changes: readonly Change[]): ReadonlySet<RecordWord> {
  return new Set(
    changes.map(({ record: { record } }) => (record.word === "default" ? record.record.word : record.word)),
  );
}

function isSameChange(one: readonly Change[], other: readonly Change[]): boolean {
  return (
    one.length === other.length &&
    one.every(({ node, record: { record, site } }, index) => {
      const change = other[index];
      return change?.node === node && change.record.record === record && change.record.site === site;
    })
  );
}
