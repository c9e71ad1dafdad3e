/** What to order: the needs of the build less what there is, in whole packs, with prices and the day to order by. */
import type { Build } from "../build/build.ts";
import { recordOf } from "../build/judgement.ts";
import { KeptOfAll } from "../build/kept-of-each.ts";
import type { Standing } from "../build/standing.ts";
import type { TreeNode } from "../build/tree/node.ts";
import type { IsoDate } from "../quantities/dates.ts";
import { ZERO } from "../quantities/decimal.ts";
import { orderBy } from "./needed-by.ts";
import type { PartNeed, Why } from "./needs.ts";
import type { OrderSum, SupplierTerms } from "./order-arithmetic.ts";
import { sumOrder } from "./order-arithmetic.ts";
import type { Purchase } from "./packs.ts";
import { purchase } from "./packs.ts";
import type { Plan } from "./plan.ts";
import { jobsFor, leadDaysOf, supplierOf } from "./plan.ts";

export interface OrderLine {
  readonly need: PartNeed;
  readonly supplier: string | undefined;
  readonly purchase: Purchase;
  readonly why: readonly Why[];
  readonly leadDays: number | undefined;
  readonly needBy: IsoDate | undefined;
  readonly orderBy: IsoDate | undefined;
  /** Ordered today, it comes after it is needed. */
  readonly late: boolean;
}

export interface Order {
  readonly lines: readonly OrderLine[];
  readonly sum: OrderSum<OrderLine>;
}

/** The order of a build: late lines first, then by the day to order by, then in the order of definition. */
export function orderOf({ standing }: Pick<Build, "standing">, plan: Plan): Order {
  return orders.of(standing, [plan], (own) => makeOrder(own, plan));
}

const orders = new KeptOfAll<Order>();

function makeOrder(standing: Standing, plan: Plan): Order {
  const lines = plan.needs
    .filter(({ toOrder }) => toOrder > 0)
    .map((need) => lineFor(standing, plan, need))
    .sort(byUrgency);
  const { root } = standing.gathered.tree;
  const sum = sumOrder(lines, {
    suppliers: [...standing.names.every("supplier")].map(
      (definition): SupplierTerms => ({
        name: definition.name,
        carriage: recordOf(definition, "carriage")?.money,
        minimum: recordOf(definition, "minimum")?.money,
      }),
    ),
    taxPercent: standing.definitions.one(root, "tax")?.record.share.times(100) ?? ZERO,
    currency: standing.definitions.one(root, "currency")?.record.currency,
    rates: standing.definitions.all(root, "rate").map(({ record }) => record.rate),
  });
  return { lines, sum };
}

function lineFor(standing: Standing, plan: Plan, need: PartNeed): OrderLine {
  const { node } = need;
  const pack = standing.definitions.one(node, "pack")?.record;
  const leadDays = leadDaysOf(standing, node);
  const needBy = neededBy(standing, plan, node);
  const latestOrder = needBy && orderBy(needBy, leadDays ?? 0);
  return {
    need,
    supplier: supplierOf(standing, node)?.name,
    purchase: purchase(need.toOrder, {
      price: standing.definitions.one(node, "price")?.record.money,
      pack: pack && { size: pack.count, price: pack.price },
    }),
    why: whyOf(standing, need),
    leadDays,
    needBy,
    orderBy: latestOrder,
    late: latestOrder !== undefined && latestOrder < standing.date,
  };
}

function whyOf(standing: Standing, { node, demand, keep }: PartNeed): Why[] {
  const asked = demand.kinds.flatMap(({ askers }) =>
    askers.map(({ count, why }) => ({ ...why, text: count === 1 ? why.text : `${count} × ${why.text}` })),
  );
  const kept = standing.definitions.one(node, "keep");
  if (keep === 0 || kept === undefined) return asked;
  return [...asked, { text: `${keep} to keep on the shelf`, place: { site: kept.site, ...kept.record.at } }];
}

/**
 * The day on which the first job that needs a part must begin; for what no job names, the job on it; without a planned
 * hold point ahead, the job's `start:`; without a job, the next planned hold point.
 */
function neededBy(standing: Standing, plan: Plan, node: TreeNode): IsoDate | undefined {
  const jobs = jobsFor(standing, node);
  const dates = jobs.flatMap((job) => plan.latest.get(job.name)?.date ?? recordOf(job, "start")?.date ?? []);
  if (jobs.length > 0) return dates.sort()[0];
  const holds = [...standing.holds.values()].flatMap(({ definition }) => {
    const planned = recordOf(definition, "planned")?.date;
    return planned !== undefined &&
      planned >= standing.date &&
      plan.activities.some(({ id }) => id === definition.name)
      ? [planned]
      : [];
  });
  return holds.sort()[0];
}

function byUrgency(a: OrderLine, b: OrderLine): number {
  if (a.late !== b.late) return a.late ? -1 : 1;
  const [left, right] = [a.orderBy ?? "9999-12-31", b.orderBy ?? "9999-12-31"];
  if (left !== right) return left < right ? -1 : 1;
  return a.need.node.order - b.need.node.order;
}
