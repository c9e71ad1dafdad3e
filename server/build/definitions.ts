/** The blocks of all files gathered: the vehicle, the tree, what has names of its own, and the days. */
import { withArticle } from "../../grammar/article.ts";
import { nearest } from "../../grammar/nearest.ts";
import type { BlockWord } from "../../grammar/syntax.ts";
import { entriesOf, recordEntry } from "../../grammar/vocabulary/vocabulary.ts";
import type { IsoDate } from "../quantities/dates.ts";
import type { Decimal } from "../quantities/decimal.ts";
import type { Finding } from "./finding.ts";
import { finding } from "./finding.ts";
import { inOneList } from "./list-under.ts";
import type { LoweredBlock } from "./lowering/block.ts";
import { lowerBlock } from "./lowering/block.ts";
import type { RecordWord } from "./lowering/definition-record.ts";
import { recordKey } from "./lowering/definition-record.ts";
import type { LoweredFact } from "./lowering/fact.ts";
import { Remembered } from "./remembered.ts";
import type { BlockSite, Place, SourceFile } from "./source.ts";
import { OfBlocks, placeAt, sitesIn } from "./source.ts";
import type { LikeFault } from "./tree/like.ts";
import { expandLikes } from "./tree/like.ts";
import type { SourcedRecord } from "./tree/node.ts";
import { isWithin } from "./tree/node.ts";
import type { TextDefinition } from "./tree/text-definition.ts";
import type { Vehicle } from "./tree/tree.ts";
import { Tree } from "./tree/tree.ts";

/** A job, hold point, supplier, gauge, setup or donor. */
export interface NamedDefinition {
  readonly name: string;
  readonly kind: NamedKind;
  readonly title: string | undefined;
  readonly header: Place;
  readonly records: readonly SourcedRecord[];
  readonly order: number;
  readonly lost: readonly Place[];
}

export type NamedKind = "job" | "hold" | "supplier" | "gauge" | "setup" | "donor";

export interface DayBlock {
  readonly date: IsoDate | undefined;
  readonly hours: Decimal | undefined;
  readonly header: Place;
  readonly facts: readonly LoweredFact[];
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

const TREE_BLOCKS: ReadonlySet<BlockWord> = new Set(["assembly", "part", "joint", "system", "circuit"]);
/** Kinds that share one name space. */
const SHARED: Readonly<Record<NamedKind, string>> = {
  job: "plan",
  hold: "plan",
  supplier: "supplier",
  gauge: "gauge",
  setup: "setup",
  donor: "donor",
};

type Definition = LoweredBlock & { is: "definition" };

/** @param files in the order of definition */
export function gather(files: readonly SourceFile[]): Gathered {
  const read = files.map(readFile);
  const { defined, findings } = define(inOneList(read.map(({ others }) => others)));
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
    const read = blocksRead.of(file, (site) => (isDay(site) ? readDay(site) : undefined));
    for (const [index, one] of read.entries()) {
      if (one === undefined) others.push(sitesIn(file)[index] as BlockSite);
      else {
        if (one.day !== undefined) days.push(one.day);
        for (const each of one.findings) findings.push(each);
      }
    }
    return { days, findings, others };
  });
}

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
    site,
    header: placeAt(site, header.word),
    lost: lost.map((span) => placeAt(site, span)),
  };
}

/** What is wrong with the text of a block. */
function findingsAbout(site: BlockSite, { faults }: LoweredBlock): readonly Finding[] {
  if (faults.length === 0) return NOTHING;
  return faults.map((fault) => {
    const { code, found, expected, fixes } = fault;
    const reason = "reason" in fault ? fault.reason : undefined;
    return finding(code, placeAt(site, fault), { found, expected, reason }, { fixes });
  });
}

const NOTHING: readonly Finding[] = [];

interface Definings {
  readonly defined: Defined;
  readonly findings: readonly Finding[];
}

/** What was defined last, by the first of the blocks: who writes in the diary changes nothing of it. */
const definings = new Remembered<BlockSite, Definings>();

function define(sites: readonly BlockSite[]): Definings {
  const [first] = sites;
  return first === undefined
    ? new Gathering().run(sites)
    : definings.of(first, sites, () => new Gathering().run(sites));
}

class Gathering {
  private readonly findings: Finding[] = [];
  private vehicle: (Vehicle & { header: Place }) | undefined;
  private readonly written = new Map<string, TextDefinition>();
  private readonly named = new Map<NamedKind, Map<string, NamedDefinition>>();
  private readonly names = new Map<string, NamedDefinition>();

  run(sites: readonly BlockSite[]): Definings {
    for (const site of sites) {
      const lowered = lowerBlock(site.block);
      this.findings.push(...findingsAbout(site, lowered));
      if (lowered.is === "definition") this.define(site, lowered);
    }
    const { definitions, faults } = expandLikes(this.written);
    for (const fault of faults) this.complainOfLike(fault, definitions.keys());
    const vehicle = this.vehicle ?? { title: undefined, header: undefined, records: [], lost: [] };
    const tree = new Tree(vehicle, definitions.values());
    return { defined: { vehicle, tree, named: this.named }, findings: this.findings };
  }

  private define(site: BlockSite, definition: Definition): void {
    const written = definition.records.map((record): SourcedRecord => ({ record, site, turns: [] }));
    this.complainOfRepeats(definition.block, written);
    const records = thatCount(definition.block, written);
    const { block, name, title } = definition;
    const header = placeAt(site, definition.nameAt);
    const lost = this.lost(site, definition);
    if (block === "vehicle") this.defineVehicle({ title: name, header, records, lost });
    else if (TREE_BLOCKS.has(block)) {
      const kind = block as TextDefinition["kind"];
      this.defineInTree({
        path: name,
        kind,
        title,
        site,
        header,
        like: definition.like,
        copyOf: undefined,
        records,
        lost,
      });
    } else
      this.defineNamed({
        name,
        kind: block as NamedKind,
        title,
        header,
        records,
        lost,
        order: this.names.size,
      });
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

  private defineNamed(definition: NamedDefinition): void {
    const { kind, name } = definition;
    const key = `${SHARED[kind]} ${name}`;
    const clashing = this.names.get(key);
    if (clashing === undefined) this.names.set(key, definition);
    else this.complainOfName(kind, name, definition.header, clashing.header);
    const ofKind = this.named.get(kind) ?? new Map<string, NamedDefinition>();
    this.named.set(kind, ofKind);
    const first = ofKind.get(name);
    // A job and a hold point of one name are both there, each where its kind is meant.
    ofKind.set(name, first === undefined ? definition : joined(first, definition));
  }

  private complainOfName(what: string, name: string, place: Place, first: Place): void {
    this.findings.push(
      finding("duplicate-name", place, { what, name }, { seeAlso: [{ place: first, role: "the first" }] }),
    );
  }

  /** A record that may stand once in a block, said twice: the last counts. */
  private complainOfRepeats(block: BlockWord, records: readonly SourcedRecord[]): void {
    const seen = new Map<string, SourcedRecord>();
    for (const sourced of records) {
      const key = onceKey(block, sourced);
      if (key === undefined) continue;
      const first = seen.get(key);
      if (first !== undefined) {
        const place = placeAt(sourced.site, sourced.record.at);
        this.complainOfName("record", nameOf(sourced), place, placeAt(first.site, first.record.at));
      }
      seen.set(key, sourced);
    }
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

  private lost(
    site: BlockSite,
    { lost }: { readonly lost: readonly { readonly start: number; readonly end: number }[] },
  ): Place[] {
    return lost.map((span) => placeAt(site, span));
  }
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

/** Words that may repeat, but say one thing for each name. */
const ONCE_BY_NAME: ReadonlySet<RecordWord> = new Set(["size", "setting", "test", "calc"]);

/** What a record says once in a block; undefined where several may stand side by side. */
function onceKey(block: BlockWord, { record }: SourcedRecord): string | undefined {
  const said = record.word === "default" ? record.record : record;
  const entry = record.word === "default" ? entriesOf(said.word)[0] : recordEntry(block, said.word);
  return entry?.repeats === true && !ONCE_BY_NAME.has(said.word) ? undefined : recordKey(record);
}

function nameOf({ record }: SourcedRecord): string {
  if (record.word === "default") return `default: ${record.record.word}`;
  return "name" in record ? `${record.word}: ${record.name}` : `${record.word}:`;
}

/** Of records that say one thing, the last. */
function thatCount(block: BlockWord, records: readonly SourcedRecord[]): readonly SourcedRecord[] {
  const last = new Map(records.map((sourced) => [onceKey(block, sourced) ?? sourced, sourced]));
  return last.size === records.length
    ? records
    : records.filter((sourced) => last.get(onceKey(block, sourced) ?? sourced) === sourced);
}

/** `a.b.c`, `a.b`, `a`. */
function pathAndAbove(path: string): string[] {
  const names = path.split(".");
  return names.map((_, index) => names.slice(0, index + 1).join("."));
}
