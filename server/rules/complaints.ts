/**
 * The complaints of a build: what was noticed, put into words, graded, waived or not, in the order of the text. Those of
 * a build that goes on from another go on from the complaints of that one: only blocks that have changed, and blocks of
 * which something else is noticed, are settled again.
 */
import type { Build } from "../build/build.ts";
import type { Finding } from "../build/finding.ts";
import { inOneList, listUnder } from "../build/list-under.ts";
import { isSame } from "../build/remembered.ts";
import type { BlockSite, SourceFile } from "../build/source.ts";
import { inOrder, sitesIn } from "../build/source.ts";
import { catalogue } from "./catalogue.ts";
import type { Complaint, SeverityOverrides, Waived } from "./complaint.ts";
import type { Settled } from "./in-block.ts";
import { settle } from "./in-block.ts";
import type { CheckingRule } from "./rule.ts";
import { isSameComplaint } from "./same-complaint.ts";
import { carryOver, outside, sharedRuns } from "./shared-runs.ts";
import { complaintsOfCheck, wordFailure, wordFinding } from "./wording.ts";

/** The complaints of one file. Both lists stay the same objects as long as they hold the same. */
export interface FileComplaints extends Settled {
  readonly file: SourceFile;
  readonly sites: readonly BlockSite[];
  /** Block by block. */
  readonly blocks: readonly Settled[];
}

/** All that one way of noticing has noticed. */
interface Heard<Noticed> {
  readonly items: readonly Noticed[];
  /** The number of the file of each: a list of numbers is quickly gone through. */
  readonly homes: readonly number[];
}

/** What the complaints of the next build go on from. */
interface Grounds {
  readonly overrides: SeverityOverrides;
  readonly findings: readonly Heard<Finding>[];
  /** Rule by rule, of those that look at the build themselves. */
  readonly checks: readonly Heard<Complaint>[];
}

export class Complaints {
  /** File by file, in the order of definition. */
  readonly files: readonly FileComplaints[];
  /** Undefined where a rule has failed: then it is not known what it would have said. */
  readonly grounds: Grounds | undefined;
  private all: readonly Complaint[] | undefined;
  private allWaived: readonly Waived[] | undefined;

  constructor(files: readonly FileComplaints[], grounds: Grounds | undefined) {
    this.files = files;
    this.grounds = grounds;
  }

  get complaints(): readonly Complaint[] {
    this.all ??= this.files.flatMap(({ complaints }) => complaints);
    return this.all;
  }

  get waived(): readonly Waived[] {
    this.allWaived ??= this.files.flatMap(({ waived }) => waived);
    return this.allWaived;
  }
}

const NOTHING_SET: SeverityOverrides = new Map();

/**
 * @param overrides the same object as long as the same is set
 * @param before the complaints of an earlier build of the same files: nothing else comes out for it, but sooner
 */
export function complaintsOf(build: Build, overrides = NOTHING_SET, before?: Complaints): Complaints {
  return new Telling(build, overrides, before).complaints();
}

class Telling {
  private readonly build: Build;
  private readonly overrides: SeverityOverrides;
  private readonly files: readonly SourceFile[];
  private readonly numbers: ReadonlyMap<SourceFile, number>;
  private readonly before: Complaints | undefined;
  /** The blocks of each file of which something else has been noticed. */
  private readonly touched = new Map<number, BlockSite[]>();
  /** What there is to say of rules that threw, by their codes: they say nothing else, and take no other with them. */
  private readonly failures = new Map<string, Complaint>();

  constructor(build: Build, overrides: SeverityOverrides, before: Complaints | undefined) {
    this.build = build;
    this.overrides = overrides;
    this.files = inOrder(build.files);
    this.numbers = new Map(this.files.map((file, number) => [file, number]));
    this.before = before !== undefined && this.canGoOnFrom(before) ? before : undefined;
  }

  complaints(): Complaints {
    const { build, overrides } = this;
    const known = this.before?.grounds;
    const findings = build.findingLists.map((list, index) => this.hear(list, known?.findings[index]));
    const checks = checksUnder(overrides).map((rule, index) => {
      const then = known?.checks[index];
      return this.hear(this.check(rule, then?.items ?? []), then);
    });
    const started = this.files.map((file, number) => this.start(file, number));
    const graded = this.graded([...findings, ...checks], started);
    const failed = this.failures.size > 0;
    if (failed && this.before !== undefined) return complaintsOf(build, overrides);
    const files = started.map((file, number) => this.finish(file, this.before?.files[number], graded));
    return new Complaints(files, failed ? undefined : { overrides, findings, checks });
  }

  private canGoOnFrom({ files, grounds }: Complaints): boolean {
    return (
      grounds?.overrides === this.overrides &&
      grounds.findings.length === this.build.findingLists.length &&
      files.length === this.files.length &&
      files.every(({ file }, number) => file.path === this.files[number]?.path)
    );
  }

  /** What a rule has noticed itself: what it says again is what it said before. */
  private check(rule: CheckingRule, before: readonly Complaint[]): readonly Complaint[] {
    try {
      const now = complaintsOfCheck(rule, this.build);
      if (now === before) return before;
      const runs = sharedRuns(before, now, (one, other) => isSameComplaint(one, other, this.build));
      carryOver(runs, before, now);
      return now;
    } catch (error) {
      this.fail(rule.code, error);
      return [];
    }
  }

  /** Notes the blocks of what has come and of what has gone. */
  private hear<Noticed extends Finding | Complaint>(
    items: readonly Noticed[],
    before: Heard<Noticed> = { items: [], homes: [] },
  ): Heard<Noticed> {
    if (items === before.items) return before;
    const runs = sharedRuns(before.items, items);
    const gone = outside(runs, "then", before.items.length);
    const come = outside(runs, "now", items.length);
    for (const index of gone) {
      const { place } = before.items[index] as Noticed;
      listUnder(this.touched, before.homes[index] as number, place.site);
    }
    if (gone.length === 0 && come.length === 0) return { items, homes: before.homes };
    const homes = items.map(() => NOWHERE);
    carryOver(runs, before.homes, homes);
    for (const index of come) {
      const { place } = items[index] as Noticed;
      const home = this.numbers.get(place.site.file) ?? NOWHERE;
      homes[index] = home;
      listUnder(this.touched, home, place.site);
    }
    return { items, homes };
  }

  /** A file with those of its blocks that stay as they were settled. */
  private start(file: SourceFile, number: number): FileComplaints | Started {
    const before = this.before?.files[number];
    const touched = this.touched.get(number) ?? [];
    if (before?.file === file && touched.length === 0) return before;
    const sites = sitesIn(file);
    const kept = before === undefined ? sites.map(() => undefined) : stillSettled(before, sites);
    for (const site of touched) if (sites[site.index] === site) kept[site.index] = undefined;
    return { file, sites, kept };
  }

  /** What all rules have to complain of in the blocks that have to be settled, rule by rule. */
  private graded(
    heard: readonly Heard<Finding | Complaint>[],
    files: readonly (FileComplaints | Started)[],
  ): ReadonlyMap<BlockSite, readonly Complaint[]> {
    const bySite = new Map<BlockSite, Complaint[]>();
    for (const site of files.flatMap(unsettledIn)) bySite.set(site, []);
    const isStarted = files.map((file) => "kept" in file);
    const first = isStarted.indexOf(true);
    const isAlone = first === isStarted.lastIndexOf(true);
    const grade = ({ items }: Heard<Finding | Complaint>, index: number) =>
      this.grade(items[index] as Finding | Complaint, bySite);
    for (const each of heard) {
      const { homes } = each;
      if (isAlone) {
        // Mostly it is the one file that is edited, and the engine looks for one number several times as quickly.
        for (let at = homes.indexOf(first); at >= 0; at = homes.indexOf(first, at + 1)) grade(each, at);
      } else {
        for (let at = 0; at < homes.length; at++) if (isStarted[homes[at] as number]) grade(each, at);
      }
    }
    this.tellOfFailures(bySite);
    for (const inBlock of bySite.values()) inBlock.sort(inOrderOfRules);
    return bySite;
  }

  private grade(item: Finding | Complaint, bySite: ReadonlyMap<BlockSite, Complaint[]>): void {
    const inBlock = bySite.get(item.place.site);
    const complaint = inBlock && ("data" in item ? this.word(item) : item);
    if (complaint !== undefined) inBlock?.push(complaint);
  }

  private word(finding: Finding): Complaint | undefined {
    const rule = catalogue.get(finding.code);
    if (rule?.of !== "finding" || this.overrides.get(rule.code) === "off") return undefined;
    try {
      return wordFinding(rule, finding);
    } catch (error) {
      this.fail(rule.code, error);
      return undefined;
    }
  }

  private fail(code: string, error: unknown): void {
    const [site] = this.build.sites;
    if (site !== undefined && !this.failures.has(code))
      this.failures.set(code, wordFailure(code, site, error));
  }

  private tellOfFailures(bySite: Map<BlockSite, Complaint[]>): void {
    if (this.failures.size === 0) return;
    for (const [site, inBlock] of bySite)
      bySite.set(
        site,
        inBlock.filter(({ code }) => !this.failures.has(code)),
      );
    for (const failure of this.failures.values()) bySite.get(failure.place.site)?.push(failure);
  }

  private finish(
    file: FileComplaints | Started,
    before: FileComplaints | undefined,
    graded: ReadonlyMap<BlockSite, readonly Complaint[]>,
  ): FileComplaints {
    if (!("kept" in file)) return file;
    const { sites, kept } = file;
    const blocks = sites.map(
      (site, index) => kept[index] ?? settle(site, graded.get(site) ?? [], this.overrides),
    );
    const complaints = inOneList(blocks.map((block) => block.complaints));
    const waived = inOneList(blocks.map((block) => block.waived));
    return {
      file: file.file,
      sites,
      blocks,
      complaints: theSame(before?.complaints, complaints),
      waived: theSame(before?.waived, waived),
    };
  }
}

/** The number of the file of what stands in none of the build. */
const NOWHERE = -1;

/** A file that is gone through again, and what of its blocks stays as it was settled. */
interface Started {
  readonly file: SourceFile;
  readonly sites: readonly BlockSite[];
  readonly kept: readonly (Settled | undefined)[];
}

function unsettledIn(file: FileComplaints | Started): readonly BlockSite[] {
  return "kept" in file ? file.sites.filter((_, index) => file.kept[index] === undefined) : [];
}

/** What was settled of the blocks that are the same, and at the same place among the others. */
function stillSettled(
  { file, sites: before, blocks: settled }: FileComplaints,
  sites: readonly BlockSite[],
): (Settled | undefined)[] {
  const kept: (Settled | undefined)[] = sites.map(() => undefined);
  const { blocks } = file.document;
  for (const { then, now, length } of sharedRuns(before, sites))
    for (let index = 0; index < length; index++)
      if (sites[now + index]?.block === blocks[then + index]) kept[now + index] = settled[then + index];
  return kept;
}

/** The rules that look at the build themselves, without those that are silenced. */
function checksUnder(overrides: SeverityOverrides): readonly CheckingRule[] {
  return [...catalogue.values()].filter(
    (rule): rule is CheckingRule => rule.of === "check" && overrides.get(rule.code) !== "off",
  );
}

const RANKS: ReadonlyMap<string, number> = new Map([...catalogue.keys()].map((code, rank) => [code, rank]));

function inOrderOfRules(one: Complaint, other: Complaint): number {
  return (RANKS.get(one.code) ?? 0) - (RANKS.get(other.code) ?? 0);
}

/** The list from before where it holds the same. */
function theSame<T>(before: readonly T[] | undefined, now: readonly T[]): readonly T[] {
  return before !== undefined && isSame(before, now) ? before : now;
}
