/**
 * The diary read in the order of its dates: each fact changes how things stand, and is complained about where it
 * cannot have been so. A fact that is refused still counts for what follows, so that one mistake is one complaint.
 */
import type { ReferenceNode } from "../../../grammar/syntax.ts";
import type { IsoDate } from "../../quantities/dates.ts";
import type { NamedKind } from "../block-definition.ts";
import type { Calculation } from "../calculation.ts";
import { CareMemory } from "../care-memory.ts";
import type { Gathered, NamedDefinition } from "../definitions.ts";
import type { Finding, FindingCode, FindingExtras } from "../finding.ts";
import { finding } from "../finding.ts";
import type { FindingData } from "../finding-data.ts";
import { Inspections } from "../inspections.ts";
import type { LostLine } from "../lost-lines.ts";
import { linesAbout } from "../lost-reasons.ts";
import type { FactWord } from "../lowering/fact.ts";
import type { Names } from "../names.ts";
import { isSame } from "../remembered.ts";
import type { Place } from "../source.ts";
import { placeAt } from "../source.ts";
import type { Standing } from "../standing.ts";
import type {
  DatedFact,
  GaugeState,
  HoldState,
  JobState,
  JointState,
  LapsedReleases,
  PartState,
  Reading,
  SettingState,
  SnagState,
  SupplyState,
  SystemState,
  TestState,
} from "../states.ts";
import { subjectFinding } from "../subject-finding.ts";
import type { Change, Definitions } from "../tree/definitions.ts";
import { DefinitionsInForce } from "../tree/definitions.ts";
import type { TreeKind, TreeNode } from "../tree/node.ts";
import type { Target } from "../tree/resolve.ts";
import type { DefinedOtherwise } from "./asked.ts";
import { Asked, AskedDefinitions } from "./asked.ts";
import { SharedTable, StateTable } from "./state-table.ts";

/** What a subject does on each kind of fact. */
export type Handlers = { readonly [W in FactWord]?: (replay: Replay, fact: DatedFact<W>) => void };

/**
 * What overtakes a complaint about the present tightening of a joint; each of these does so with all that the ones
 * before it overtake.
 */
export type Overtaker = "checked" | "tightened" | "renewed" | "opened";

/** A complaint that is said once it is overtaken, or once the diary is read. */
export interface WaitingComplaint {
  readonly until: Overtaker;
  readonly say: (replay: Replay, standing: "current" | "past") => void;
}

/** What a moment stands on besides the diary. */
export interface Ground {
  /** The definitions in force at one of the moments. */
  readonly inForce: DefinitionsInForce;
  /** The lines of blocks that could not be read, before and now: they come before those of the days. */
  readonly lostBefore: readonly LostLine[];
  readonly lost: readonly LostLine[];
  /** The days of which other lines could not be read, in their order. */
  readonly unread: readonly UnreadOfDay[];
}

/** The lines of one day that could not be read, before and now. */
export interface UnreadOfDay {
  readonly day: number;
  readonly before: readonly LostLine[];
  readonly now: readonly LostLine[];
  /** So many lines could not be read before them. */
  readonly behind: number;
}

/** How things stand, with the means to change it and to complain. */
export class Replay implements Standing {
  readonly gathered: Gathered;
  readonly names: Names;
  readonly today: IsoDate;
  /** What has been asked of the definitions so far. */
  readonly asked: Asked;
  private inForce: DefinitionsInForce;
  /** While the diary is being read they note what is asked of them. */
  definitions: Definitions;
  date: IsoDate;
  readonly parts: StateTable<TreeNode, PartState>;
  readonly joints: StateTable<TreeNode, JointState>;
  readonly readings: SharedTable<TreeNode, readonly Reading[]>;
  readonly systems: StateTable<TreeNode, SystemState>;
  readonly settings: SharedTable<TreeNode, ReadonlyMap<string, SettingState>>;
  readonly tests: SharedTable<TreeNode, ReadonlyMap<string, TestState>>;
  readonly holdTests: SharedTable<NamedDefinition, ReadonlyMap<string, TestState>>;
  readonly snags: StateTable<string, SnagState>;
  readonly jobs: StateTable<NamedDefinition, JobState>;
  readonly holds: StateTable<NamedDefinition, HoldState>;
  readonly gauges: StateTable<NamedDefinition, GaugeState>;
  readonly supply: StateTable<TreeNode, SupplyState>;
  /** The parts of each order, by its ref. */
  readonly ordered: SharedTable<string, ReadonlySet<TreeNode>>;
  readonly calculated: SharedTable<string, Calculation>;
  /** Every calculation of a day, in order. */
  readonly calculations: Calculation[];
  readonly disturbed: SharedTable<TreeNode, DatedFact>;
  private lostSoFar: LostLine[];
  private isFinished = false;
  readonly findings: Finding[];
  /** Releases taken back so far: complained of at the end, since a new release overtakes them. */
  readonly lapses: LapsedReleases[];
  /** What the fact that is being read has disturbed. */
  readonly touched = new Set<TreeNode>();
  /** Complaints about the present tightening of each joint. */
  readonly waiting: SharedTable<TreeNode, readonly WaitingComplaint[]>;
  readonly inspections: Inspections;
  readonly care: CareMemory;

  /**
   * @param before the moment to go on from; without one, the beginning, of which nothing is known yet
   * @param inForce the definitions of that moment
   */
  constructor(
    gathered: Gathered,
    names: Names,
    today: IsoDate,
    date: IsoDate,
    before?: Replay,
    inForce = before?.inForce ?? DefinitionsInForce.of(gathered.written),
  ) {
    this.asked = before?.asked.copy() ?? new Asked(gathered.tree.all.length);
    this.inForce = inForce;
    this.definitions = new AskedDefinitions(inForce, this.asked);
    this.gathered = gathered;
    this.names = names;
    this.today = today;
    this.date = date;
    this.parts = before?.parts.copy() ?? new StateTable();
    this.joints = before?.joints.copy() ?? new StateTable();
    this.systems = before?.systems.copy() ?? new StateTable();
    this.snags = before?.snags.copy() ?? new StateTable();
    this.jobs = before?.jobs.copy() ?? new StateTable();
    this.holds = before?.holds.copy() ?? new StateTable();
    this.gauges = before?.gauges.copy() ?? new StateTable();
    this.supply = before?.supply.copy() ?? new StateTable();
    this.readings = before?.readings.copy() ?? new SharedTable();
    this.settings = before?.settings.copy() ?? new SharedTable();
    this.tests = before?.tests.copy() ?? new SharedTable();
    this.holdTests = before?.holdTests.copy() ?? new SharedTable();
    this.ordered = before?.ordered.copy() ?? new SharedTable();
    this.calculated = before?.calculated.copy() ?? new SharedTable();
    this.disturbed = before?.disturbed.copy() ?? new SharedTable();
    this.waiting = before?.waiting.copy() ?? new SharedTable();
    this.calculations = before?.calculations.slice() ?? [];
    this.lostSoFar = before?.lostSoFar.slice() ?? [];
    this.findings = before?.findings.slice() ?? [];
    this.lapses = before?.lapses.slice() ?? [];
    this.inspections = before?.inspections.copy() ?? new Inspections();
    this.care = before?.care.copy() ?? new CareMemory();
  }

  /** This moment again, to be gone on from by itself. */
  copy(gathered: Gathered): Replay {
    return new Replay(gathered, this.names, this.today, this.date, this);
  }

  /**
   * This moment again with blocks of the same tree, which say nothing otherwise that was asked for.
   *
   * @param day so many days have been read
   */
  on(gathered: Gathered, { inForce, lostBefore, lost, unread }: Ground, day: number): Replay | undefined {
    const own = inForce.at(this.inForce.moment);
    if (own === undefined) return undefined;
    const copy = new Replay(gathered, this.names, this.today, this.date, this, own);
    // From the last on, so that those before stay where they are.
    for (const each of unread.toReversed())
      if (each.day < day) copy.lostSoFar.splice(each.behind, each.before.length, ...each.now);
    copy.lostSoFar.splice(0, lostBefore.length, ...lost);
    return copy;
  }

  /** What is defined at this moment by blocks that say some things otherwise; undefined where a change is about those. */
  definedBy({ written }: Gathered, aspects: DefinedOtherwise["aspects"]): DefinitionsInForce | undefined {
    return aspects.size === 0 ? this.inForce : this.inForce.on(written, aspects);
  }

  /** Lines that could not be read, from here on. */
  lose(...lines: readonly LostLine[]): void {
    this.lostSoFar.push(...lines);
  }

  /** Says that the lines that could not be read are those of another reading. */
  shareLost({ lostSoFar }: Replay): void {
    if (isSame(this.lostSoFar, lostSoFar)) this.lostSoFar = lostSoFar;
  }

  /** The definitions are others from today on. */
  change(changes: readonly Change[]): void {
    this.inForce = this.inForce.with(changes);
    this.definitions = new AskedDefinitions(this.inForce, this.asked);
  }

  /** The diary has been read: no state grows any more. */
  finish(): void {
    const { parts, joints, systems, snags, jobs, holds, gauges, supply } = this;
    for (const table of [parts, joints, systems, snags, jobs, holds, gauges, supply]) table.finish();
    this.definitions = this.inForce;
    this.isFinished = true;
  }

  /** Lines up to this moment that could not be read, or not in full. */
  get lost(): readonly LostLine[] {
    if (!this.isFinished) this.asked.askForLost();
    return this.lostSoFar;
  }

  complain<C extends FindingCode>(code: C, place: Place, data: FindingData[C], extras?: FindingExtras): void {
    this.findings.push(finding(code, place, data, extras));
  }

  /** A complaint about one thing: it knows whether the thing can hurt. */
  complainOf<C extends FindingCode>(
    node: TreeNode,
    code: C,
    place: Place,
    data: FindingData[C],
    extras: FindingExtras = {},
  ): void {
    const lostAbout = () => {
      this.asked.seek(node);
      return linesAbout(node, this.lostSoFar);
    };
    this.findings.push(subjectFinding(this, lostAbout, node, code, place, data, extras));
  }

  /** The parts that references mean. */
  partsOf(references: readonly ReferenceNode[]): readonly Target[] {
    return this.targetsOf(references, "part");
  }

  targetsOf(
    references: readonly ReferenceNode[],
    kind: "part" | "joint" | "system" | "circuit",
  ): readonly Target[] {
    return this.each(references, KIND[kind]);
  }

  /** Everything of the tree that references mean, assemblies included. */
  everythingOf(references: readonly ReferenceNode[]): readonly Target[] {
    return this.each(references, ANY_KIND);
  }

  /** What references mean, each thing once. */
  private each(references: readonly ReferenceNode[], kinds: readonly TreeKind[]): readonly Target[] {
    const [first, second] = references;
    if (first === undefined) return [];
    // One reference means nothing twice.
    if (second === undefined) return this.names.targets(first, kinds);
    const found = new Map<TreeNode, Target>();
    for (const reference of references)
      for (const target of this.names.targets(reference, kinds))
        if (!found.has(target.node)) found.set(target.node, target);
    return [...found.values()];
  }

  named(kind: NamedKind, reference: ReferenceNode | undefined): NamedDefinition | undefined {
    return reference && this.names.named(kind, reference.text);
  }

  /** The place of a stretch of a fact's line. */
  placeIn(fact: DatedFact, span: { readonly start: number; readonly end: number }): Place {
    return placeAt(fact.place.site, span);
  }

  /** A thing was removed, fitted, loosened, opened or changed: what was proved of it, and of all above it, no longer is. */
  disturb(node: TreeNode, fact: DatedFact): void {
    this.touched.add(node);
    for (let above: TreeNode | undefined = node; above !== undefined; above = above.parent)
      this.disturbed.set(above, fact);
  }
}

const KIND = {
  part: ["part"],
  joint: ["joint"],
  system: ["system"],
  circuit: ["circuit"],
} as const satisfies Readonly<Record<string, readonly TreeKind[]>>;
const ANY_KIND: readonly TreeKind[] = ["assembly", "part", "joint", "system", "circuit"];
