/**
 * What the blocks say of the things of a tree. The tree is the same for as long as the same things are defined in the same
 * places; what they say of themselves changes with each key that someone types in their blocks.
 */
import { recordEntry } from "../../../grammar/vocabulary/vocabulary.ts";
import type { RecordWord } from "../lowering/definition-record.ts";
import { recordKey } from "../lowering/definition-record.ts";
import { isSame, madeOnce } from "../remembered.ts";
import type { Place } from "../source.ts";
import { textAt } from "../source.ts";
import type { Aspect } from "./aspect.ts";
import type { SourcedRecord, TreeNode } from "./node.ts";

/** What a block says of its thing. */
export interface Statement {
  readonly records: readonly SourcedRecord[];
  readonly lost: readonly Place[];
}

/** What counts of a thing: the same object for as long as it is the same. */
export interface Counting {
  /** By their words, in order. */
  readonly records: ReadonlyMap<RecordWord, readonly SourcedRecord[]>;
  /** The words of its lines that could not be read. */
  readonly unread: readonly string[];
}

/** What is said of one thing, and once someone has asked, what counts of it. */
interface Said {
  readonly records: readonly SourcedRecord[];
  readonly characteristics: readonly string[];
  readonly unread: readonly string[];
  counting: Counting | undefined;
}

const NONE: readonly never[] = [];
const NOTHING: Said = {
  records: NONE,
  characteristics: NONE,
  unread: NONE,
  counting: undefined,
};

/** What counts of assemblies without a block: what those above say for them, as long as the tree is the same. */
const ofOthers = new WeakMap<TreeNode, Counting>();

export class Written {
  /** The same object for as long as things give the same names to what can be measured of them. */
  readonly naming: object;
  /** By the order of the things. */
  private readonly said: readonly Said[];

  private constructor(said: readonly Said[], naming: object) {
    this.said = said;
    this.naming = naming;
  }

  /** @param statements of each thing that has a block, by its order */
  static of(statements: readonly Statement[]): Written {
    const said = statements.map((statement) => saidBy(statement, undefined));
    return new Written(said, {});
  }

  /**
   * The same of an edited text, with the same things: what says the same as here stays the same object.
   *
   * @returns undefined where an assembly says something else for all that is below it
   */
  after(statements: readonly Statement[]): Written | undefined {
    const said: Said[] = [];
    let isNamedAlike = true;
    for (const [order, statement] of statements.entries()) {
      const before = this.said[order] ?? NOTHING;
      const now = saidBy(statement, before);
      if (now !== before && !saysTheSame(defaultsIn(before), defaultsIn(now))) return undefined;
      isNamedAlike &&= isSame(before.characteristics, now.characteristics);
      said.push(now);
    }
    return new Written(said, isNamedAlike ? this.naming : {});
  }

  /** Everything that a thing's own block says, and what was copied to it. */
  records(node: TreeNode): readonly SourcedRecord[] {
    return this.of(node).records;
  }

  /** The names that a thing's own records give to what can be measured of it, each once. */
  characteristics(node: TreeNode): readonly string[] {
    return this.of(node).characteristics;
  }

  /** What counts of a thing before anything is changed in the diary. */
  counting(node: TreeNode): Counting {
    const said = this.of(node);
    if (said === NOTHING) return madeOnce(ofOthers, node, () => this.countingOf(node, said));
    said.counting ??= this.countingOf(node, said);
    return said.counting;
  }

  private countingOf(node: TreeNode, { records, unread }: Said): Counting {
    return counted(node, records, unread, (above) => this.records(above));
  }

  private of({ order }: TreeNode): Said {
    return this.said[order] ?? NOTHING;
  }

  /** What things say otherwise than before, of the same tree. */
  differencesTo(before: Written, things: readonly TreeNode[]): ReadonlyMap<TreeNode, ReadonlySet<Aspect>> {
    const differences = new Map<TreeNode, ReadonlySet<Aspect>>();
    if (before === this) return differences;
    for (const [order, said] of this.said.entries()) {
      const known = before.said[order] ?? NOTHING;
      if (said !== known) differences.set(things[order] as TreeNode, differing(known, said));
    }
    return differences;
  }
}

function defaultsIn({ records }: Said): readonly SourcedRecord[] {
  return records.filter(({ record }) => record.word === "default");
}

function saidBy({ records, lost }: Statement, before: Said | undefined): Said {
  const unread = lost.length === 0 ? NONE : lost.map((place) => /^\w*/.exec(textAt(place))?.[0] ?? "");
  const isAsBefore =
    before !== undefined && isSame(before.unread, unread) && saysTheSame(before.records, records);
  return isAsBefore
    ? before
    : { records, characteristics: characteristicsIn(records), unread, counting: undefined };
}

function saysTheSame(before: readonly SourcedRecord[], now: readonly SourcedRecord[]): boolean {
  if (before === now) return true;
  return (
    before.length === now.length &&
    before.every((known, index) => isSameRecord(known, now[index] as SourcedRecord))
  );
}

/** A record that is copied is made anew with each reading of the blocks. */
function isSameRecord(one: SourcedRecord, other: SourcedRecord): boolean {
  return (
    one.record === other.record &&
    one.site === other.site &&
    one.turns.length === other.turns.length &&
    one.turns.every(({ from, to }, index) => {
      const turn = other.turns[index];
      return turn?.from === from && turn.to === to;
    })
  );
}

function differing(before: Said, now: Said): ReadonlySet<Aspect> {
  const aspects = new Set<Aspect>();
  if (!isSame(before.unread, now.unread)) aspects.add("unread");
  if (!isSame(before.characteristics, now.characteristics)) aspects.add("characteristics");
  const then = byWord(before.records);
  const after = byWord(now.records);
  for (const word of new Set([...then.keys(), ...after.keys()]))
    if (!saysTheSame(then.get(word) ?? NONE, after.get(word) ?? NONE)) aspects.add(word);
  return aspects;
}

function characteristicsIn(records: readonly SourcedRecord[]): readonly string[] {
  const names = records.flatMap(({ record }) =>
    "name" in record && record.word !== "test" ? [record.name] : [],
  );
  return names.length === 0 ? NONE : [...new Set(names)];
}

function byWord(records: readonly SourcedRecord[]): Map<RecordWord, SourcedRecord[]> {
  const grouped = new Map<RecordWord, SourcedRecord[]>();
  for (const sourced of records) {
    const same = grouped.get(sourced.record.word);
    if (same === undefined) grouped.set(sourced.record.word, [sourced]);
    else same.push(sourced);
  }
  return grouped;
}

/**
 * What counts of a thing: what it says itself, and the defaults of the assemblies above for what it says nothing about.
 *
 * @param recordsOf what an assembly says
 */
export function counted(
  node: TreeNode,
  own: readonly SourcedRecord[],
  unread: readonly string[],
  recordsOf: (node: TreeNode) => readonly SourcedRecord[],
): Counting {
  const records = [...own];
  const said = new Set(own.map(({ record }) => recordKey(record)));
  for (const fallback of defaultsAbove(node, recordsOf))
    if (!said.has(recordKey(fallback.record))) records.push(fallback);
  return { records: byWord(records), unread };
}

/** The defaults that reach a thing, of the nearest assembly that has one for each word and name. */
function defaultsAbove(
  node: TreeNode,
  recordsOf: (node: TreeNode) => readonly SourcedRecord[],
): SourcedRecord[] {
  const found = new Map<string, SourcedRecord[]>();
  for (let above = node.parent; above !== undefined; above = above.parent) {
    const here = new Map<string, SourcedRecord[]>();
    for (const sourced of recordsOf(above)) {
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
