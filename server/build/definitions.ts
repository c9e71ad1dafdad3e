/** The blocks of all files gathered: the vehicle, the tree, what has names of its own, and the days. */
import { withArticle } from "../../grammar/article.ts";
import { nearest } from "../../grammar/nearest.ts";
import type { IsoDate } from "../quantities/dates.ts";
import type { Decimal } from "../quantities/decimal.ts";
import type { NamedKind, WrittenName } from "./block-definition.ts";
import { definedIn, findingsAbout, saidTwice, thatCount } from "./block-definition.ts";
import type { Finding } from "./finding.ts";
import { finding } from "./finding.ts";
import { inOneList } from "./list-under.ts";
import type { LoweredBlock } from "./lowering/block.ts";
import { lowerBlock } from "./lowering/block.ts";
import type { LoweredFact } from "./lowering/fact.ts";
import { isSame, Remembered } from "./remembered.ts";
import type { BlockSite, Place, SourceFile } from "./source.ts";
import { OfBlocks, placeAt, sitesIn } from "./source.ts";
import type { LikeFault } from "./tree/like.ts";
import { expandLikes } from "./tree/like.ts";
import { isWithin } from "./tree/node.ts";
import type { TextDefinition } from "./tree/text-definition.ts";
import type { Vehicle } from "./tree/tree.ts";
import { ROOT, Tree } from "./tree/tree.ts";
import { Written } from "./tree/written.ts";

/** A job, hold point, supplier, gauge, setup or donor. */
export interface NamedDefinition extends WrittenName {
  readonly order: number;
}

export interface DayBlock {
  readonly date: IsoDate | undefined;
  readonly hours: Decimal | undefined;
  readonly header: Place;
  readonly facts: readonly LoweredFact[];
  /** Whether one of the facts changes what is defined: all days are asked at each key. */
  readonly changes: boolean;
  readonly site: BlockSite;
  readonly lost: readonly Place[];
}

export type DatedDay = DayBlock & { readonly date: IsoDate };

export function isDated(day: DayBlock): day is DatedDay {
  return day.date !== undefined;
}

/** What the blocks define, all but the days. */
export interface Defined {
  readonly vehicle: Vehicle;
  readonly tree: Tree;
  /** What is said of the things of the tree. */
  readonly written: Written;
  readonly named: ReadonlyMap<NamedKind, ReadonlyMap<string, NamedDefinition>>;
}

export interface Gathered extends Defined {
  /** In the order of definition. */
  readonly days: readonly DayBlock[];
  /** The days of each file: the same lists as long as the file is the same. */
  readonly dayLists: readonly (readonly DayBlock[])[];
  /** What is wrong with the text: of all but the days, then of the days of each file. */
  readonly findingLists: readonly (readonly Finding[])[];
}

/** Kinds that share one name space. */
const SHARED: Readonly<Record<NamedKind, string>> = {
  job: "plan",
  hold: "plan",
  supplier: "supplier",
  gauge: "gauge",
  setup: "setup",
  donor: "donor",
};

/** @param files in the order of definition */
export function gather(files: readonly SourceFile[]): Gathered {
  const read = files.map(readFile);
  const { defined, findings } = define(read.map(({ others }) => others));
  const dayLists = read.map(({ days }) => days);
  let days: readonly DayBlock[] | undefined;
  return {
    ...defined,
    get days() {
      days ??= inOneList(dayLists);
      return days;
    },
    dayLists,
    findingLists: [findings, ...read.map((file) => file.findings)],
  };
}

/** The days of one file, in the order of its lines. */
export function daysIn(file: SourceFile): readonly DayBlock[] {
  return readFile(file).days;
}

interface FileRead {
  readonly days: readonly DayBlock[];
  /** What is wrong with the text of the days. */
  readonly findings: readonly Finding[];
  /** The blocks that are no days. */
  readonly others: readonly BlockSite[];
}

const filesRead = new Remembered<SourceFile, FileRead>();
const blocksRead = new OfBlocks<DayRead | undefined>();

function readFile(file: SourceFile): FileRead {
  return filesRead.of(file, [], () => {
    const days: DayBlock[] = [];
    const findings: Finding[] = [];
    const others: BlockSite[] = [];
    const read = blocksRead.of(file, [], (site) => (isDay(site) ? readDay(site) : undefined));
    const sites = sitesIn(file);
    for (let index = 0; index < sites.length; index++) {
      const one = read[index];
      if (one === undefined) others.push(sites[index] as BlockSite);
      else {
        if (one.day !== undefined) days.push(one.day);
        for (const each of one.findings) findings.push(each);
      }
    }
    return { days, findings, others: others.length === 0 ? NO_SITES : others };
  });
}

const NO_SITES: readonly BlockSite[] = [];

function isDay({ block }: BlockSite): boolean {
  return block.header?.block === "day";
}

interface DayRead {
  readonly day: DayBlock | undefined;
  readonly findings: readonly Finding[];
}

function readDay(site: BlockSite): DayRead {
  const lowered = lowerBlock(site.block);
  const day = lowered.is === "day" ? dayOf(site, lowered) : undefined;
  return { day, findings: findingsAbout(site, lowered) };
}

function dayOf(
  site: BlockSite,
  { date, hours, facts, header, lost }: LoweredBlock & { is: "day" },
): DayBlock {
  return {
    date,
    hours,
    facts,
    changes: facts.some(({ word }) => word === "changed"),
    site,
    header: placeAt(site, header.word),
    lost: lost.map((span) => placeAt(site, span)),
  };
}

interface Definings {
  readonly defined: Defined;
  readonly findings: readonly Finding[];
}

/** What was defined last, by the first of the blocks: who writes in the diary changes nothing of it. */
const latest = new WeakMap<BlockSite, Latest>();

interface Latest extends Definings {
  /** The blocks by file: a file that is as it was has the same list. */
  readonly lists: readonly (readonly BlockSite[])[];
  readonly inputs: readonly unknown[];
}

/** @param lists the blocks of each file that are no days */
function define(lists: readonly (readonly BlockSite[])[]): Definings {
  const first = lists.find(({ length }) => length > 0)?.[0];
  if (first === undefined) return new Gathering().run([]);
  const known = latest.get(first);
  if (known !== undefined && isSame(known.lists, lists)) return known;
  const sites = inOneList(lists);
  const inputs = [...sites, ...sites.map(({ block }) => block)];
  const isAsBefore = known !== undefined && isSame(known.inputs, inputs);
  const made = isAsBefore ? known : new Gathering().run(sites, known?.defined);
  latest.set(first, { ...made, lists, inputs });
  return made;
}

const ordered = new Remembered<WrittenName, NamedDefinition>();
const joinedNames = new Remembered<NamedDefinition, NamedDefinition>();

class Gathering {
  private readonly findings: Finding[] = [];
  private vehicle: (Vehicle & { header: Place }) | undefined;
  private readonly written = new Map<string, TextDefinition>();
  private readonly named = new Map<NamedKind, Map<string, NamedDefinition>>();
  private readonly names = new Map<string, NamedDefinition>();

  /** @param before what was defined before an edit: where the same things are, the tree and its things stay the same objects */
  run(sites: readonly BlockSite[], before?: Defined): Definings {
    for (const site of sites) {
      const { definition, findings } = definedIn(site);
      for (const each of findings) this.findings.push(each);
      if (definition?.is === "vehicle") this.defineVehicle(definition.vehicle);
      else if (definition?.is === "in tree") this.defineInTree(definition.definition);
      else if (definition?.is === "named") this.defineNamed(definition.definition);
    }
    const { definitions, faults } = expandLikes(this.written);
    for (const fault of faults) this.complainOfLike(fault, definitions.keys());
    return { defined: this.defined([...definitions.values()], before), findings: this.findings };
  }

  private defined(expanded: readonly TextDefinition[], before: Defined | undefined): Defined {
    const { named } = this;
    const vehicle = this.vehicle ?? NO_VEHICLE;
    // Nothing can take the place of the whole; the name has been complained about.
    const definitions = expanded.filter(({ path }) => path !== ROOT);
    const statements = [vehicle, ...definitions];
    const isOfSame =
      before?.vehicle === vehicle && isSameNames(before.named, named) && before.tree.isOf(definitions);
    const after = isOfSame ? before.written.after(statements) : undefined;
    if (before !== undefined && after !== undefined) return { ...before, written: after };
    return { vehicle, tree: new Tree(vehicle, definitions), named, written: Written.of(statements) };
  }

  private defineVehicle(vehicle: Vehicle & { header: Place }): void {
    if (this.vehicle === undefined) this.vehicle = vehicle;
    else {
      const data = { name: vehicle.title ?? "", first: this.vehicle.title ?? "" };
      this.findings.push(
        finding("second-vehicle", vehicle.header, data, {
          seeAlso: [{ place: this.vehicle.header, role: "the first" }],
        }),
      );
    }
  }

  private defineInTree(definition: TextDefinition): void {
    const first = this.written.get(definition.path);
    if (first === undefined) {
      this.written.set(definition.path, definition);
      return;
    }
    this.complainOfName(definition.kind, definition.path, definition.header, first.header);
    // Nothing is lost: the records of the second block count as if they stood in the first.
    this.written.set(definition.path, {
      ...first,
      title: first.title ?? definition.title,
      like: first.like ?? definition.like,
      records: thatCount(first.kind, [...first.records, ...definition.records]),
      lost: [...first.lost, ...definition.lost],
    });
  }

  private defineNamed(unordered: WrittenName): void {
    const { kind, name } = unordered;
    const order = this.names.size;
    const definition = ordered.of(unordered, [order], () => ({ ...unordered, order }));
    const key = `${SHARED[kind]} ${name}`;
    const clashing = this.names.get(key);
    if (clashing === undefined) this.names.set(key, definition);
    else this.complainOfName(kind, name, definition.header, clashing.header);
    const ofKind = this.named.get(kind) ?? new Map<string, NamedDefinition>();
    this.named.set(kind, ofKind);
    const first = ofKind.get(name);
    // A job and a hold point of one name are both there, each where its kind is meant.
    const both = first && joinedNames.of(definition, [first], () => joined(first, definition));
    ofKind.set(name, both ?? definition);
  }

  private complainOfName(what: string, name: string, place: Place, first: Place): void {
    this.findings.push(saidTwice(what, name, place, first));
  }

  private complainOfLike(fault: LikeFault, paths: Iterable<string>): void {
    const { definition } = fault;
    switch (fault.is) {
      case "unknown": {
        const place = likePlace(definition);
        const others = [...paths].flatMap(pathAndAbove).filter((path) => !isWithin(path, definition.path));
        const near = nearest(fault.path, new Set(others), 4);
        const fixes = near.map((text) => ({ ...place, text, title: `Write ${text}`, sure: false }));
        const data = { text: fault.path, kinds: [definition.kind], nearest: near };
        this.findings.push(finding("unknown-reference", place, data, { fixes }));
        return;
      }
      case "kind": {
        const copied = definition.like?.text === fault.path;
        const data = { text: fault.path, kind: fault.kind, wanted: withArticle(definition.kind) };
        this.findings.push(
          finding("reference-kind", copied ? likePlace(definition) : definition.header, data),
        );
        return;
      }
      case "cycle":
        this.findings.push(finding("like-cycle", likePlace(definition), { paths: fault.paths }));
        return;
      case "too many":
        this.findings.push(
          finding("like-cycle", likePlace(definition), { paths: [definition.path, "copies without end"] }),
        );
    }
  }
}

const NO_VEHICLE: Vehicle = { title: undefined, header: undefined, records: [], lost: [] };

/** Whether all that has a name outside of the tree is the same, in the same order. */
function isSameNames(one: Defined["named"], other: Defined["named"]): boolean {
  return isSame([...one.keys()], [...other.keys()]) && isSame(everyNamed(one), everyNamed(other));
}

function everyNamed(named: Defined["named"]): readonly NamedDefinition[] {
  return [...named.values()].flatMap((ofKind) => [...ofKind.values()]);
}

/** Where a block says what it is like. */
function likePlace({ site, like, header }: TextDefinition): Place {
  return like === undefined ? header : placeAt(site, like);
}

/** Two blocks of one name and kind: the records of the second count as if they stood in the first. */
function joined(first: NamedDefinition, second: NamedDefinition): NamedDefinition {
  return {
    ...first,
    title: first.title ?? second.title,
    records: thatCount(first.kind, [...first.records, ...second.records]),
    lost: [...first.lost, ...second.lost],
  };
}

/** `a.b.c`, `a.b`, `a`. */
function pathAndAbove(path: string): string[] {
  const names = path.split(".");
  return names.map((_, index) => names.slice(0, index + 1).join("."));
}
