/** What the build asks for: every part that is needed, by what, and with the lines that caused it. */
import type { Build } from "../build/build.ts";
import type { NamedDefinition } from "../build/definitions.ts";
import { recordsOf } from "../build/judgement.ts";
import type { Life } from "../build/lives.ts";
import { isInUse, isOver, livesOf } from "../build/lives.ts";
import type { PlannedHold } from "../build/planned-holds.ts";
import { nextHoldCovering, plannedHolds } from "../build/planned-holds.ts";
import type { Place } from "../build/source.ts";
import { placeAt } from "../build/source.ts";
import type { Standing } from "../build/standing.ts";
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

/** Parts that are needed, kept or on order, in the order of definition. */
export function needsOf({ standing }: Build): readonly PartNeed[] {
  const askers = new Asking(standing).all();
  return [...standing.supply.values()].flatMap(({ node, inHand, orders }): PartNeed[] => {
    const demand = combineDemand(askers.get(node) ?? []);
    const keep = standing.definitions.one(node, "keep")?.record.count ?? 0;
    const onOrder = orders.reduce((sum, line) => sum + line.count - line.received, 0);
    const toOrder = countToOrder({ needed: demand.needed, keep, inHand, onOrder });
    return demand.needed + keep + onOrder === 0 ? [] : [{ node, demand, keep, inHand, onOrder, toOrder }];
  });
}

class Asking {
  private readonly standing: Standing;
  private readonly askers = new Map<TreeNode, Asker<Why>[]>();

  constructor(standing: Standing) {
    this.standing = standing;
  }

  all(): ReadonlyMap<TreeNode, readonly Asker<Why>[]> {
    this.askDecisions();
    this.askJoints();
    this.askSingleUse();
    this.askJobs();
    this.askLives();
    return this.askers;
  }

  private ask(node: TreeNode | undefined, asker: Asker<Why>): void {
    if (node === undefined || node.kind !== "part") return;
    const known = this.askers.get(node);
    if (known === undefined) this.askers.set(node, [asker]);
    else known.push(asker);
  }

  /** `renew` and `make` ask for the part, `recondition` for its kit, until it is carried out. */
  private askDecisions(): void {
    for (const { node, decision } of this.standing.parts.values()) {
      if (decision === undefined || decision.settled !== undefined) continue;
      const { count, fact } = decision;
      if (decision.decision === "renew" || decision.decision === "make") {
        this.ask(node, {
          kind: "decision",
          count,
          why: { text: `decided: ${decision.decision}`, place: fact.place },
        });
      }
      const kit = this.standing.definitions.one(node, "kit");
      if (decision.decision === "recondition" && kit !== undefined) {
        const kitNode = this.standing.names.one(kit.record.reference, ["part"], kit.turns);
        this.ask(kitNode, {
          kind: "kit",
          count,
          why: { text: `kit to recondition ${node.path}`, place: fact.place },
        });
      }
    }
  }

  /** Single-use hardware of joints that are open now. */
  private askJoints(): void {
    const { definitions, names } = this.standing;
    for (const { node, undone } of this.standing.joints.values()) {
      if (undone === undefined) continue;
      for (const { record, turns } of definitions.all(node, "uses")) {
        for (const { count, reference } of record.items) {
          const why: Why = { text: `spent when ${node.path} is tightened`, place: undone.place };
          this.ask(names.one(reference, ["part"], turns), { kind: "joint", count, why });
        }
      }
    }
  }

  private askSingleUse(): void {
    const { definitions, parts } = this.standing;
    for (const { node, place, placed } of parts.values()) {
      if (definitions.one(node, "single_use")?.record.yes !== true || place === "on" || place === "trial")
        continue;
      if (placed === undefined) continue;
      const count = definitions.one(node, "count")?.record.count ?? 1;
      this.ask(node, {
        kind: "single_use",
        count,
        why: { text: "single use, and off", place: placed.place },
      });
    }
  }

  private askJobs(): void {
    for (const { definition, done } of this.standing.jobs.values()) {
      if (done !== undefined) continue;
      for (const sourced of definition.records) {
        if (sourced.record.word !== "needs" || !("items" in sourced.record)) continue;
        const place = placeAt(sourced.site, sourced.record.at);
        for (const { count, reference } of sourced.record.items) {
          for (const { node } of this.standing.names.targets(reference, ["part"])) {
            this.ask(node, {
              kind: "job",
              count,
              why: { text: `needed by the job ${definition.name}`, place, job: definition },
            });
          }
        }
      }
    }
  }

  /** A life that ends before the next planned hold point that covers the part asks for all of its `count`. */
  private askLives(): void {
    const { standing } = this;
    const planned = plannedHolds(standing);
    if (planned.length === 0) return;
    for (const part of standing.parts.values()) {
      const { node, item } = part;
      const lifed = item.expires !== undefined || standing.definitions.one(node, "life") !== undefined;
      if (!lifed || !isInUse(standing, part)) continue;
      const hold = nextHoldCovering(standing, planned, node);
      if (hold === undefined) continue;
      const by = laterDate(hold.planned, standing.date);
      const ended = livesOf(standing, part).find((life) => isOver(life, by));
      if (ended === undefined) continue;
      const count = standing.definitions.one(node, "count")?.record.count ?? 1;
      this.ask(node, { kind: "life", count, why: { text: lifeEnds(ended, hold), place: ended.place } });
    }
  }
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
