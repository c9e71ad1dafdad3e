/**
 * What one build hands on to the next: verdicts, and by what each of them looked up, which of them a change may touch. So
 * a change costs what it touches, not what there is.
 */
import type { LeaningsOn } from "./leaning.ts";
import { inOneList } from "./list-under.ts";
import type { Lookups, Source } from "./lookups.ts";
import { DAYS, LEANINGS, LOST } from "./lookups.ts";
import type { LostLine } from "./lost-lines.ts";
import { wordsOf } from "./lost-reasons.ts";
import { isSame, sharedBeginning } from "./remembered.ts";
import type { Standing, TableName } from "./standing.ts";
import type { Aspect } from "./tree/aspect.ts";
import { AspectSet } from "./tree/aspect.ts";
import type { TreeNode } from "./tree/node.ts";

/** The keys under which two standings differ, by the table; none of those in which all is the same. */
export type Differences = ReadonlyMap<TableName, readonly unknown[]>;

/** How a standing differs from an earlier one of the same things. */
export interface DifferencesTo {
  readonly earlier: Standing;
  readonly differences: Differences;
  /** What is said otherwise of some of the things. */
  readonly aspects: ReadonlyMap<TreeNode, ReadonlySet<Aspect>>;
}

export interface Verdict<Thing, Result> {
  readonly thing: Thing;
  readonly lookups: Lookups;
  readonly results: readonly Result[];
}

type AnyVerdict = Verdict<object, unknown>;

export class Memory {
  private readonly rolls = new Map<object, Roll<object, unknown>>();
  /** The verdicts that have looked something up, by what they asked for. */
  private readonly askers = new Map<unknown, Map<AnyVerdict, Roll<object, unknown>>>();
  private readonly sets = new Map<object, ReadonlySet<unknown>>();
  /** Of this standing are all verdicts that are not in doubt. */
  private standing: Standing | undefined;
  private leanings: LeaningsOn | undefined;
  /**
   * True where other things are defined than in the build before: no verdict holds. Someone writes a name, and the next key
   * will make it another one again, so that keeping the new verdicts would not pay.
   */
  private isIdle = false;

  /** Whether verdicts on a standing are kept here. */
  keeps({ standing }: Source): boolean {
    return this.standing === standing && !this.isIdle;
  }

  /** Goes on to another standing. */
  goOn({ standing, leanings }: Source, to: DifferencesTo | undefined): void {
    const { standing: before, leanings: leant, isIdle: wasIdle } = this;
    this.standing = standing;
    this.leanings = leanings;
    this.isIdle = before !== undefined && !hasSameGrounds(before, standing);
    if (before === undefined || leant === undefined || wasIdle) return;
    if (this.isIdle) this.forget();
    else if (to?.earlier !== before) for (const roll of this.rolls.values()) roll.doubtAll();
    else this.doubtWhatDiffers(before, leant, to);
  }

  private forget(): void {
    this.rolls.clear();
    this.askers.clear();
  }

  private doubtWhatDiffers(
    before: Standing,
    leant: LeaningsOn,
    { differences, aspects }: DifferencesTo,
  ): void {
    const { standing, leanings } = this;
    if (standing === undefined || leanings === undefined) return;
    for (const [table, keys] of differences) for (const key of [table, ...keys]) this.doubt(key);
    for (const node of aspects.keys()) this.doubt(node);
    if (aspects.size > 0) {
      const words = new Set([...aspects.values()].flatMap((each) => [...each]));
      for (const set of AspectSet.with(words)) this.doubt(set);
    }
    this.doubt(DAYS);
    if (standing.lost !== before.lost) this.doubtLost(before.lost, standing);
    if (!leanings.areAs(leant)) this.doubt(LEANINGS);
  }

  /** The verdicts of a kind, which is named by an object of its own. */
  rollOf<Thing extends object, Result>(kind: object): Roll<Thing, Result> {
    const known = this.rolls.get(kind) ?? new Roll<object, unknown>(this.askers);
    this.rolls.set(kind, known);
    return known as unknown as Roll<Thing, Result>;
  }

  /** The set of a kind as it was before, where it holds the same. */
  sameSet<Item>(kind: object, set: ReadonlySet<Item>): ReadonlySet<Item> {
    const known = this.sets.get(kind) as ReadonlySet<Item> | undefined;
    if (known?.size === set.size && [...set].every((item) => known.has(item))) return known;
    this.sets.set(kind, set);
    return set;
  }

  private doubt(key: unknown): void {
    for (const [verdict, roll] of this.askers.get(key) ?? []) roll.doubtful.add(verdict);
  }

  /** Lines came or went that are about a thing, or may be. */
  private doubtLost(before: readonly LostLine[], { lost, gathered }: Standing): void {
    this.doubt(LOST);
    const alike = sharedBeginning(before, lost);
    const [known, now] = [new Set(before.slice(alike)), new Set(lost.slice(alike))];
    const others = [...known, ...now].filter((line) => !known.has(line) || !now.has(line));
    for (const line of others) {
      const nodes = line.nodes ?? [...wordsOf(line)].flatMap((word) => gathered.tree.withTail(word));
      for (const node of nodes) this.doubt(node);
    }
  }
}

/** What every verdict rests on. */
function hasSameGrounds(one: Standing, other: Standing): boolean {
  return (
    one.definitions.moment === other.definitions.moment &&
    one.names === other.names &&
    one.date === other.date
  );
}

/** The verdicts of one kind, on each of a list of things. */
class Roll<Thing extends object, Result> {
  things: readonly Thing[] = [];
  inputs: readonly unknown[] = [];
  /** The verdicts that may be other than they were. */
  readonly doubtful = new Set<Verdict<Thing, Result>>();
  /** The things on which there is no verdict. */
  private readonly open = new Set<Thing>();
  private readonly verdicts = new Map<Thing, Verdict<Thing, Result>>();
  private readonly askers: Map<unknown, Map<Verdict<Thing, Result>, Roll<Thing, Result>>>;
  /** The results on each thing, as they were last given together, but for those that came since. */
  private readonly results = new Map<Thing, readonly Result[]>();
  private inOrder: readonly Result[] = [];
  private isInOrder = true;

  constructor(askers: Map<unknown, Map<Verdict<Thing, Result>, Roll<Thing, Result>>>) {
    this.askers = askers;
  }

  /** The things on which there is no verdict, in their order. */
  get without(): readonly Thing[] {
    const { open, things } = this;
    if (open.size < 2) return [...open];
    return open.size === things.length ? things : things.filter((thing) => open.has(thing));
  }

  /** All results in the order of the things: the same list where they are the same. */
  get together(): readonly Result[] {
    if (this.isInOrder) return this.inOrder;
    const all = inOneList(this.things.map((thing) => this.results.get(thing) ?? []));
    if (!isSame(all, this.inOrder)) this.inOrder = all;
    this.isInOrder = true;
    return this.inOrder;
  }

  enter(verdict: Verdict<Thing, Result>): void {
    const { thing, lookups, results } = verdict;
    this.verdicts.set(thing, verdict);
    this.open.delete(thing);
    this.tell(thing, results);
    for (const key of lookups.keys()) {
      const known = this.askers.get(key);
      if (known === undefined) this.askers.set(key, new Map([[verdict, this]]));
      else known.set(verdict, this);
    }
  }

  /** Most things have nothing told of them, before and after. */
  private tell(thing: Thing, results: readonly Result[]): void {
    const known = this.results.get(thing);
    if (isSame(known ?? [], results)) return;
    if (results.length === 0) this.results.delete(thing);
    else this.results.set(thing, results);
    this.isInOrder = false;
  }

  doubtAll(): void {
    for (const verdict of this.verdicts.values()) this.doubtful.add(verdict);
  }

  /** Gives up those verdicts; the others are no longer in doubt. */
  dismiss(verdicts: Iterable<Verdict<Thing, Result>>): void {
    this.doubtful.clear();
    for (const verdict of verdicts) {
      this.verdicts.delete(verdict.thing);
      this.open.add(verdict.thing);
      for (const key of verdict.lookups.keys()) {
        const known = this.askers.get(key);
        known?.delete(verdict);
        if (known?.size === 0) this.askers.delete(key);
      }
    }
  }

  dismissAll(): void {
    this.dismiss([...this.verdicts.values()]);
  }

  /** From now on it is on these things. */
  goOnWith(things: readonly Thing[]): void {
    const present = new Set(things);
    this.dismiss([...this.verdicts.values()].filter(({ thing }) => !present.has(thing)));
    for (const thing of this.open) if (!present.has(thing)) this.leave(thing);
    for (const thing of things) if (!this.verdicts.has(thing)) this.open.add(thing);
    this.things = things;
    this.isInOrder = false;
  }

  private leave(thing: Thing): void {
    this.open.delete(thing);
    this.results.delete(thing);
  }
}
