/** What the build asks for: every part that is needed, by what, and with the lines that caused it. */
import type { Build } from "../build/build.ts";
import type { NamedDefinition } from "../build/definitions.ts";
import { recordsOf } from "../build/judgement.ts";
import { KeptOfAll, KeptOfEach } from "../build/kept-of-each.ts";
import { listUnder } from "../build/list-under.ts";
import type { Life } from "../build/lives.ts";
import { isInUse, isOver, livesOf } from "../build/lives.ts";
import type { PlannedHold } from "../build/planned-holds.ts";
import { nextHoldCovering, plannedHolds } from "../build/planned-holds.ts";
import { Remembered } from "../build/remembered.ts";
import type { Review } from "../build/review.ts";
import { thingsThatSay } from "../build/sayers.ts";
import type { Place } from "../build/source.ts";
import { placeAt } from "../build/source.ts";
import type { Standing } from "../build/standing.ts";
import type { SupplyState } from "../build/states.ts";
import type { TreeNode } from "../build/tree/node.ts";
import { laterDate } from "../quantities/dates.ts";
import { formatQuantity } from "../quantities/quantity.ts";
import type { Asker, Demand } from "./demand.ts";
import { combineDemand, countToOrder } from "./demand.ts";

/** A reason in words, and the line that it comes from. */
export interface Why {
  readonly text: string;
  readonly place: Place;
  /** The job that asks, where one does. */
  readonly job?: NamedDefinition;
}

export interface PartNeed {
  readonly node: TreeNode;
  readonly demand: Demand<Why>;
  readonly keep: number;
  readonly inHand: number;
  readonly onOrder: number;
  /** Pieces still to be ordered, before packs. */
  readonly toOrder: number;
}

const needs = new KeptOfEach<TreeNode, PartNeed>();

/** Parts that are needed, kept or on order, in the order of definition; the same list as long as all needs are. */
export function needsOf({ standing }: Pick<Build, "standing">): readonly PartNeed[] {
  const askers = askersIn(standing);
  return needs.of(standing, standing.gathered.tree.ofKind("part"), [askers], (own, node) => {
    const supply = own.supply.get(node);
    if (supply === undefined) return [];
    const asking = askers.get(node) ?? NOBODY;
    const keep = own.definitions.one(node, "keep")?.record.count ?? 0;
    return remembered.of(supply, [keep, ...asking], () => needOf(supply, keep, asking));
  });
}

const NOBODY: readonly Asker<Why>[] = [];
const remembered = new Remembered<SupplyState, readonly PartNeed[]>();

function needOf(
  { node, inHand, orders }: SupplyState,
  keep: number,
  askers: readonly Asker<Why>[],
): readonly PartNeed[] {
  const demand = combineDemand(askers);
  const onOrder = orders.reduce((sum, line) => sum + line.count - line.received, 0);
  const toOrder = countToOrder({ needed: demand.needed, keep, inHand, onOrder });
  return demand.needed + keep + onOrder === 0 ? [] : [{ node, demand, keep, inHand, onOrder, toOrder }];
}

/** Something that asks for a part. */
interface Asking {
  readonly node: TreeNode;
  readonly asker: Asker<Why>;
}

type Askers = ReadonlyMap<TreeNode, readonly Asker<Why>[]>;

/** All that ask for each part: decisions, joints, single use, jobs, lives. */
function askersIn(review: Review): Askers {
  const { gathered, names } = review;
  const parts = gathered.tree.ofKind("part");
  const askings = [
    byDecisions.of(review, parts, [], byDecision),
    byJoints.of(review, gathered.tree.ofKind("joint"), [], byJoint),
    bySingleUses.of(review, thingsThatSay(review, "single_use"), [], bySingleUse),
    byJobs.of(review, [...names.every("job")], [], byJob),
    byLives.of(review, parts, [], byLife),
  ];
  return sorted.of(review, askings, () => byPart(askings));
}

const byDecisions = new KeptOfEach<TreeNode, Asking>();
const byJoints = new KeptOfEach<TreeNode, Asking>();
const bySingleUses = new KeptOfEach<TreeNode, Asking>();
const byJobs = new KeptOfEach<NamedDefinition, Asking>();
const byLives = new KeptOfEach<TreeNode, Asking>();
const sorted = new KeptOfAll<Askers>();

function byPart(askings: readonly (readonly Asking[])[]): Askers {
  const askers = new Map<TreeNode, Asker<Why>[]>();
  for (const { node, asker } of askings.flat()) listUnder(askers, node, asker);
  return askers;
}

/** `renew` and `make` ask for the part, `recondition` for its kit, until it is carried out. */
function byDecision({ definitions, names, parts }: Standing, node: TreeNode): readonly Asking[] {
  const decision = parts.get(node)?.decision;
  if (decision === undefined || decision.settled !== undefined) return [];
  const { count, fact } = decision;
  const { place } = fact;
  if (decision.decision === "renew" || decision.decision === "make") {
    const why: Why = { text: `decided: ${decision.decision}`, place };
    return [{ node, asker: { kind: "decision", count, why } }];
  }
  const kit = definitions.one(node, "kit");
  if (decision.decision !== "recondition" || kit === undefined) return [];
  const why: Why = { text: `kit to recondition ${node.path}`, place };
  return asking(names.one(kit.record.reference, ["part"], kit.turns), { kind: "kit", count, why });
}

/** Single-use hardware of a joint that is open now. */
function byJoint({ definitions, names, joints }: Standing, joint: TreeNode): readonly Asking[] {
  const undone = joints.get(joint)?.undone;
  if (undone === undefined) return [];
  const why: Why = { text: `spent when ${joint.path} is tightened`, place: undone.place };
  return definitions
    .all(joint, "uses")
    .flatMap(({ record, turns }) =>
      record.items.flatMap(({ count, reference }) =>
        asking(names.one(reference, ["part"], turns), { kind: "joint", count, why }),
      ),
    );
}

function bySingleUse({ definitions, parts }: Standing, node: TreeNode): readonly Asking[] {
  const { place, placed } = parts.get(node) ?? {};
  if (definitions.one(node, "single_use")?.record.yes !== true || place === "on" || place === "trial")
    return [];
  if (placed === undefined) return [];
  const count = definitions.one(node, "count")?.record.count ?? 1;
  const why: Why = { text: "single use, and off", place: placed.place };
  return [{ node, asker: { kind: "single_use", count, why } }];
}

function byJob({ names, jobs }: Standing, job: NamedDefinition): readonly Asking[] {
  if (jobs.get(job)?.done !== undefined) return [];
  return job.records.flatMap(({ record, site }) => {
    if (record.word !== "needs" || !("items" in record)) return [];
    const why: Why = { text: `needed by the job ${job.name}`, place: placeAt(site, record.at), job };
    return record.items.flatMap(({ count, reference }) =>
      names
        .targets(reference, ["part"])
        .flatMap(({ node }) => asking(node, { kind: "job" as const, count, why })),
    );
  });
}

/** A life that ends before the next planned hold point that covers the part asks for all of its `count`. */
function byLife(standing: Standing, node: TreeNode): readonly Asking[] {
  const part = standing.parts.get(node);
  if (part === undefined) return [];
  const isLifed = part.item.expires !== undefined || standing.definitions.one(node, "life") !== undefined;
  if (!isLifed || !isInUse(standing, part)) return [];
  const hold = nextHoldCovering(standing, plannedHolds(standing), node);
  if (hold === undefined) return [];
  const by = laterDate(hold.planned, standing.date);
  const ended = livesOf(standing, part).find((life) => isOver(life, by));
  if (ended === undefined) return [];
  const count = standing.definitions.one(node, "count")?.record.count ?? 1;
  const why: Why = { text: lifeEnds(ended, hold), place: ended.place };
  return [{ node, asker: { kind: "life", count, why } }];
}

function asking(node: TreeNode | undefined, asker: Asker<Why>): readonly Asking[] {
  return node?.kind === "part" ? [{ node, asker }] : [];
}

function lifeEnds(life: Life, { definition, planned }: PlannedHold): string {
  const before = `before ${definition.name}, planned for ${planned}`;
  if (life.is === "dated") return `life ends on ${life.ends}, ${before}`;
  if (life.is === "running") return `life of ${formatQuantity(life.amount)} used up, ${before}`;
  return `life over, ${before}`;
}

/** The parts that a job says it needs. */
export function partsNeededBy(standing: Standing, job: NamedDefinition): readonly TreeNode[] {
  return recordsOf(job, "needs").flatMap((record) =>
    "items" in record
      ? record.items.flatMap(({ reference }) =>
          standing.names.targets(reference, ["part"]).map(({ node }) => node),
        )
      : [],
  );
}
