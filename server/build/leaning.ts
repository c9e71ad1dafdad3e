/**
 * What leans on a thing: running of it or of something above it, a release that covers it, a hold point that covers it
 * and is planned for the past or the next days. Until something does, what was not done is still to be done and no
 * more; then its absence is worth a complaint.
 */
import { addDays } from "../quantities/dates.ts";
import type { NamedDefinition } from "./definitions.ts";
import type { FactList } from "./fact-list.ts";
import type { RelatedPlace } from "./finding.ts";
import { recordsOf } from "./judgement.ts";
import { listUnder } from "./list-under.ts";
import type { HoldNeed } from "./lowering/definition-record.ts";
import { madeOnce, Remembered } from "./remembered.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { Standing } from "./standing.ts";
import type { DatedFact } from "./states.ts";
import type { SourcedRecord, TreeKind, TreeNode } from "./tree/node.ts";
import { below } from "./tree/node.ts";

/** The same object as long as the same leans. */
export type Leaning =
  | { readonly is: "ran"; readonly fact: DatedFact<"ran"> }
  | { readonly is: "released"; readonly hold: NamedDefinition; readonly fact: DatedFact<"released"> }
  /** `place` is the `planned:` record. */
  | { readonly is: "planned"; readonly hold: NamedDefinition; readonly place: Place };

/** Days ahead within which a planned hold point already leans on what it covers. */
const DAYS_AHEAD = 7;

const TREE_KINDS: readonly TreeKind[] = ["assembly", "part", "joint", "system", "circuit"];

/** Tells what leans on a thing. */
export interface LeaningsOn {
  /**
   * The first thing that leans on a node, running before releases before plans; undefined where nothing does.
   *
   * @param since the fact that made something due; running and releases count only after it. Undefined: from the start
   * @param need what a hold point must ask for to lean on the node: `joints` for a joint
   */
  readonly on: (node: TreeNode, since: DatedFact | undefined, need: HoldNeed) => Leaning | undefined;
  /** Whether the same leans as by others, of the same definitions and the same day. */
  readonly areAs: (others: LeaningsOn) => boolean;
}

/** What leans on each thing of a build, found once for the whole diary. */
export class Leanings implements LeaningsOn {
  private readonly ran: readonly DatedFact[];
  private readonly released: readonly DatedFact[];
  private readonly standing: Standing;
  private readonly runs: ReadonlyMap<TreeNode, readonly DatedFact<"ran">[]>;
  private readonly releases = new Map<NamedDefinition, DatedFact<"released">[]>();
  private readonly planned = new Map<NamedDefinition, Leaning>();
  private readonly covered = new Map<NamedDefinition, ReadonlySet<TreeNode>>();

  /** @param standing as it is today; `facts` are all that count */
  constructor(standing: Standing, facts: FactList) {
    this.standing = standing;
    const ran = facts.of("ran");
    this.ran = ran;
    this.released = facts.of("released");
    this.runs = runsByNode.of(standing.names, [ran], () => runsOf(standing, ran));
    for (const fact of facts.of("released")) this.noteRelease(fact);
    const soon = addDays(standing.date, DAYS_AHEAD);
    for (const hold of standing.names.every("hold")) {
      const sourced = hold.records.findLast(({ record }) => record.word === "planned");
      if (sourced?.record.word === "planned" && sourced.record.date <= soon)
        this.planned.set(hold, plannedFor(hold, sourced));
    }
  }

  on(node: TreeNode, since: DatedFact | undefined, need: HoldNeed): Leaning | undefined {
    const ran = this.ranSince(node, since);
    if (ran !== undefined) return ranBy(ran);
    for (const [hold, facts] of this.releases) {
      const fact = facts.find(({ order }) => order > (since?.order ?? -1));
      if (fact !== undefined && this.asks(hold, node, need)) return releasedBy(fact, hold);
    }
    for (const [hold, leaning] of this.planned) if (this.asks(hold, node, need)) return leaning;
    return undefined;
  }

  areAs(others: LeaningsOn): boolean {
    return others instanceof Leanings && others.ran === this.ran && others.released === this.released;
  }

  /** The first running of a thing, or of anything above it, after a fact. */
  ranSince(node: TreeNode, since: DatedFact | undefined): DatedFact<"ran"> | undefined {
    let first: DatedFact<"ran"> | undefined;
    for (let above: TreeNode | undefined = node; above !== undefined; above = above.parent) {
      const run = this.runs.get(above)?.find(({ order }) => order > (since?.order ?? -1));
      if (run !== undefined && (first === undefined || run.order < first.order)) first = run;
    }
    return first;
  }

  private asks(hold: NamedDefinition, node: TreeNode, need: HoldNeed): boolean {
    return asksFor(hold, need) && this.coveredBy(hold).has(node);
  }

  private coveredBy(hold: NamedDefinition): ReadonlySet<TreeNode> {
    return madeOnce(this.covered, hold, () =>
      covers.of(hold, [this.standing.names], () => coveredBy(this.standing, hold)),
    );
  }

  private noteRelease(fact: DatedFact<"released">): void {
    for (const reference of fact.fact.what) {
      const hold = this.standing.names.named("hold", reference.text);
      if (hold !== undefined) this.releases.set(hold, [...(this.releases.get(hold) ?? []), fact]);
    }
  }
}

const covers = new Remembered<NamedDefinition, ReadonlySet<TreeNode>>();
const runsByNode = new Remembered<Standing["names"], ReturnType<typeof runsOf>>();

/** The running of each thing that was named, in order. */
function runsOf(
  standing: Standing,
  ran: readonly DatedFact<"ran">[],
): ReadonlyMap<TreeNode, readonly DatedFact<"ran">[]> {
  const byNode = new Map<TreeNode, DatedFact<"ran">[]>();
  for (const fact of ran) {
    for (const node of standing.names.things(fact.fact.target, TREE_KINDS)) listUnder(byNode, node, fact);
  }
  return byNode;
}

const runs = new Remembered<DatedFact<"ran">, Leaning>();
const releases = new WeakMap<NamedDefinition, Remembered<DatedFact<"released">, Leaning>>();
const plans = new Remembered<SourcedRecord, Leaning>();

function ranBy(fact: DatedFact<"ran">): Leaning {
  return runs.of(fact, [], () => ({ is: "ran", fact }));
}

function releasedBy(fact: DatedFact<"released">, hold: NamedDefinition): Leaning {
  const ofHold = releases.get(hold) ?? new Remembered<DatedFact<"released">, Leaning>();
  releases.set(hold, ofHold);
  return ofHold.of(fact, [], () => ({ is: "released", hold, fact }));
}

function plannedFor(hold: NamedDefinition, sourced: SourcedRecord): Leaning {
  const { site, record } = sourced;
  return plans.of(sourced, [hold], () => ({ is: "planned", hold, place: placeAt(site, record.at) }));
}

/** Everything of the tree that a hold point covers: what its `covers:` means, assemblies included; all without one. */
export function coveredBy(
  { gathered, names }: Pick<Standing, "gathered" | "names">,
  hold: NamedDefinition,
): ReadonlySet<TreeNode> {
  const records = hold.records.flatMap((sourced) =>
    sourced.record.word === "covers" ? [{ record: sourced.record, turns: sourced.turns }] : [],
  );
  if (records.length === 0) return new Set(gathered.tree.nodes());
  const covered = new Set<TreeNode>();
  for (const { record, turns } of records) {
    for (const reference of record.references) {
      for (const { node } of names.targets(reference, TREE_KINDS, turns)) {
        covered.add(node);
        if (node.kind === "assembly" || node.kind === "vehicle")
          for (const inner of below(node)) covered.add(inner);
      }
    }
  }
  return covered;
}

/** Whether a hold point asks for things of a kind; without `needs:` it asks for all. */
export function asksFor(hold: NamedDefinition, need: HoldNeed): boolean {
  const needs = recordsOf(hold, "needs");
  return needs.length === 0 || needs.some((asked) => "kinds" in asked && asked.kinds.includes(need));
}

/** What leans, as a place that belongs to a complaint. */
export function leaningPlace(leaning: Leaning): RelatedPlace {
  switch (leaning.is) {
    case "ran":
      return { place: leaning.fact.place, role: "running" };
    case "released":
      return { place: leaning.fact.place, role: `released ${leaning.hold.name}` };
    case "planned":
      return { place: leaning.place, role: `${leaning.hold.name} is planned` };
  }
}
