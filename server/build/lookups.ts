/**
 * What a computation has looked up in a standing, and what it found there. As long as the same lookups find the same,
 * its result is the same: nobody has to name by hand what a verdict hangs on, and nothing can be left out.
 */
import type { Gathered } from "./definitions.ts";
import type { Leaning, LeaningsOn } from "./leaning.ts";
import { asKept } from "./list-under.ts";
import type { LostLine } from "./lost-lines.ts";
import type { RecordWord } from "./lowering/definition-record.ts";
import { isSame } from "./remembered.ts";
import type { Standing, TableName } from "./standing.ts";
import { TABLES } from "./standing.ts";
import { StandingView } from "./standing-view.ts";
import type { AspectSet } from "./tree/aspect.ts";
import type { Definitions } from "./tree/definitions.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";
import type { Counting } from "./tree/written.ts";

/** Where verdicts look: how things stand, and the lines that may be why something about a thing is complained of. */
export interface Source {
  readonly standing: Standing;
  readonly lostAbout: (node: TreeNode) => readonly LostLine[];
  readonly leanings: LeaningsOn;
}

/** What can be asked for as a whole. */
export const DAYS = "all days";
export const LOST = "all lost lines";
export const LEANINGS = "what leans";

type Table = ReadonlyMap<unknown, unknown>;

/** One lookup, which can be made again in another source. */
type Lookup =
  | { readonly in: TableName; readonly key: unknown; readonly found: unknown }
  | { readonly in: "whole table"; readonly table: TableName; readonly found: unknown }
  | { readonly in: "days" | "lost"; readonly found: unknown }
  | { readonly in: "definitions"; readonly node: TreeNode; readonly found: object }
  | { readonly in: "since"; readonly aspects: AspectSet; readonly found: object }
  | { readonly in: "lost about"; readonly node: TreeNode; readonly found: readonly LostLine[] }
  | {
      readonly in: "leanings";
      readonly asked: Parameters<LeaningsOn["on"]>;
      readonly found: Leaning | undefined;
    };

/** The lookups of one computation. Nothing of the source itself is held on to, only what was found. */
export class Lookups {
  private made: readonly Lookup[] = [];
  private readonly names: Standing["names"];
  private readonly date: Standing["date"];

  constructor({ standing: { names, date } }: Source) {
    this.names = names;
    this.date = date;
  }

  /** Whether all of them find the same in another source. */
  holdIn({ standing, lostAbout, leanings }: Source): boolean {
    return (
      standing.names === this.names &&
      standing.date === this.date &&
      this.made.every((lookup) => {
        switch (lookup.in) {
          case "days":
            return standing.gathered.days === lookup.found;
          case "lost":
            return standing.lost === lookup.found;
          case "definitions":
            return standing.definitions.counting(lookup.node) === lookup.found;
          case "since":
            return standing.definitions.since(lookup.aspects) === lookup.found;
          case "lost about":
            return isSame(lostAbout(lookup.node), lookup.found);
          case "leanings":
            return leanings.on(...lookup.asked) === lookup.found;
          case "whole table":
            return asAWhole(standing[lookup.table]) === lookup.found;
          default:
            return (standing[lookup.in] as Table).get(lookup.key) === lookup.found;
        }
      })
    );
  }

  /** What was asked for: a change of anything else leaves them as they are. */
  keys(): readonly unknown[] {
    return this.made.map(keyOf);
  }

  /** The computation is over: no more are made. */
  close(): void {
    this.made = asKept(this.made);
  }

  /** A source in which every lookup is noted here. */
  noteIn({ standing, lostAbout, leanings }: Source): Source {
    const made: Lookup[] = [];
    this.made = made;
    return {
      standing: new NotedStanding(standing, made),
      lostAbout: (node) => {
        const found = lostAbout(node);
        made.push({ in: "lost about", node, found });
        return found;
      },
      leanings: {
        on: (...asked) => {
          const found = leanings.on(...asked);
          made.push({ in: "leanings", asked, found });
          return found;
        },
        areAs: (others) => leanings.areAs(others),
      },
    };
  }
}

/** What things there are stays the same as long as the names do, and needs no note; what is said of them does, and all else. */
class NotedStanding extends StandingView {
  private readonly defined: Definitions;
  private readonly made: Lookup[];
  private readonly tables = new Map<TableName, NotedTable>();

  constructor(standing: Standing, made: Lookup[]) {
    super(standing);
    this.made = made;
    this.defined = new NotedDefinitions(standing.definitions, made);
  }

  override get definitions(): Standing["definitions"] {
    return this.defined;
  }

  override get gathered(): Standing["gathered"] {
    return new NotedGathered(this.standing.gathered, this.made);
  }

  override get lost(): Standing["lost"] {
    const { lost } = this.standing;
    this.made.push({ in: "lost", found: lost });
    return lost;
  }

  /** The table of a name, noted. */
  table(name: TableName): Table {
    const known = this.tables.get(name);
    if (known !== undefined) return known;
    const table = new NotedTable(name, this.standing[name], this.made);
    this.tables.set(name, table);
    return table;
  }
}

for (const name of TABLES)
  Object.defineProperty(NotedStanding.prototype, name, {
    get(this: NotedStanding) {
      return this.table(name);
    },
  });

/** Definitions that note of which things they are asked. */
class NotedDefinitions implements Definitions {
  private readonly definitions: Definitions;
  private readonly made: Lookup[];
  private readonly seen = new Set<TreeNode>();
  private readonly seenSince = new Set<AspectSet>();

  constructor(definitions: Definitions, made: Lookup[]) {
    this.definitions = definitions;
    this.made = made;
  }

  get moment(): object {
    return this.definitions.moment;
  }

  counting(node: TreeNode): Counting {
    const found = this.definitions.counting(node);
    if (!this.seen.has(node)) {
      this.seen.add(node);
      this.made.push({ in: "definitions", node, found });
    }
    return found;
  }

  all<W extends RecordWord>(node: TreeNode, word: W): readonly SourcedRecord<W>[] {
    this.counting(node);
    return this.definitions.all(node, word);
  }

  one<W extends RecordWord>(node: TreeNode, word: W): SourcedRecord<W> | undefined {
    this.counting(node);
    return this.definitions.one(node, word);
  }

  asWritten<W extends RecordWord>(node: TreeNode, word: W): SourcedRecord<W> | undefined {
    this.counting(node);
    return this.definitions.asWritten(node, word);
  }

  unread(node: TreeNode): readonly string[] {
    return this.counting(node).unread;
  }

  characteristics(node: TreeNode): readonly string[] {
    this.counting(node);
    return this.definitions.characteristics(node);
  }

  ofThing(node: TreeNode): object {
    return this.counting(node);
  }

  since(aspects: AspectSet): object {
    const found = this.definitions.since(aspects);
    if (!this.seenSince.has(aspects)) {
      this.seenSince.add(aspects);
      this.made.push({ in: "since", aspects, found });
    }
    return found;
  }
}

/** A table that notes what is looked up in it. */
class NotedTable implements Table {
  private readonly name: TableName;
  private readonly table: Table;
  private readonly made: Lookup[];
  private readonly seen = new Set<unknown>();
  private seenAsAWhole = false;

  constructor(name: TableName, table: Table, made: Lookup[]) {
    this.name = name;
    this.table = table;
    this.made = made;
  }

  get(key: unknown): unknown {
    const found = this.table.get(key);
    if (!this.seen.has(key)) {
      this.seen.add(key);
      this.made.push({ in: this.name, key, found });
    }
    return found;
  }

  has(key: unknown): boolean {
    return this.get(key) !== undefined;
  }

  /** The table that is noted, however often it is. */
  whole(): Table {
    const found = asAWhole(this.table);
    if (!this.seenAsAWhole) this.made.push({ in: "whole table", table: this.name, found });
    this.seenAsAWhole = true;
    return found;
  }

  get size(): number {
    return this.whole().size;
  }

  forEach(each: (value: unknown, key: unknown, table: Table) => void): void {
    this.whole().forEach(each);
  }

  entries() {
    return this.whole().entries();
  }

  keys() {
    return this.whole().keys();
  }

  values() {
    return this.whole().values();
  }

  [Symbol.iterator]() {
    return this.whole()[Symbol.iterator]();
  }
}

function asAWhole(table: Table): Table {
  return table instanceof NotedTable ? table.whole() : table;
}

class NotedGathered implements Gathered {
  readonly vehicle: Gathered["vehicle"];
  readonly tree: Gathered["tree"];
  readonly named: Gathered["named"];
  private readonly gathered: Gathered;
  private readonly made: Lookup[];

  constructor(gathered: Gathered, made: Lookup[]) {
    this.vehicle = gathered.vehicle;
    this.tree = gathered.tree;
    this.named = gathered.named;
    this.gathered = gathered;
    this.made = made;
  }

  get days(): Gathered["days"] {
    const { days } = this.gathered;
    this.made.push({ in: "days", found: days });
    return days;
  }

  get dayLists(): Gathered["dayLists"] {
    this.made.push({ in: "days", found: this.gathered.days });
    return this.gathered.dayLists;
  }

  get written(): Gathered["written"] {
    throw new Error("a verdict asks the definitions");
  }

  get findingLists(): Gathered["findingLists"] {
    throw new Error("the findings of the text are none of a verdict's grounds");
  }
}

function keyOf(lookup: Lookup): unknown {
  switch (lookup.in) {
    case "days":
      return DAYS;
    case "lost":
      return LOST;
    case "leanings":
      return LEANINGS;
    case "definitions":
    case "lost about":
      return lookup.node;
    case "since":
      return lookup.aspects;
    case "whole table":
      return lookup.table;
    default:
      return lookup.key;
  }
}
