/** The parts to order, as a report object and as a table to print. */
import type { Build } from "../build/build.ts";
import type { Order, OrderLine } from "../plan/order.ts";
import { orderOf } from "../plan/order.ts";
import type { SupplierOrder } from "../plan/order-arithmetic.ts";
import { lineTotal } from "../plan/order-arithmetic.ts";
import type { Plan } from "../plan/plan.ts";
import { addDays } from "../quantities/dates.ts";
import type { Money } from "../quantities/money.ts";
import { formatMoney } from "../quantities/money.ts";
import type { JsonMoney, JsonWhy } from "./json-values.ts";
import { jsonAmount, jsonMoney, jsonWhy, sayPlace } from "./json-values.ts";
import type { Table, TableSection } from "./table.ts";
import { column } from "./table.ts";

export interface OrderReport {
  readonly schema: "cotter/order/1";
  readonly today: string;
  readonly lines: readonly {
    readonly ref: string;
    readonly title: string | null;
    readonly number: string | null;
    readonly quantity: number;
    readonly packs: number | null;
    readonly supplier: string | null;
    readonly unitPrice: JsonMoney | null;
    readonly currency: string | null;
    readonly total: JsonMoney | null;
    readonly needed: number;
    readonly keep: number;
    readonly inHand: number;
    readonly onOrder: number;
    readonly why: readonly JsonWhy[];
    readonly needBy: string | null;
    readonly orderBy: string | null;
    readonly late: boolean;
  }[];
  /** One a currency: the amount holds carriage and tax. */
  readonly totals: readonly {
    readonly amount: string;
    readonly currency: string;
    readonly carriage: string;
    readonly tax: string;
  }[];
}

export function orderReport(build: Build, plan: Plan): OrderReport {
  const { lines, sum } = orderOf(build, plan);
  const { definitions } = build.standing;
  return {
    schema: "cotter/order/1",
    today: build.today,
    lines: lines.map((line) => {
      const { node, demand, keep, inHand, onOrder } = line.need;
      const total = lineTotal(line);
      return {
        ref: node.path,
        title: node.title ?? null,
        number: definitions.one(node, "number")?.record.text ?? null,
        quantity: line.purchase.quantity,
        packs: line.purchase.packs?.count ?? null,
        supplier: line.supplier ?? null,
        unitPrice: jsonMoney(line.purchase.unitPrice),
        currency: total?.currency ?? null,
        total: jsonMoney(total),
        needed: demand.needed,
        keep,
        inHand,
        onOrder,
        why: line.why.map(jsonWhy),
        needBy: line.needBy ?? null,
        orderBy: line.orderBy ?? null,
        late: line.late,
      };
    }),
    totals: sum.totals.map(({ amount, carriage, tax }) => ({
      amount: jsonAmount(amount),
      currency: amount.currency,
      carriage: jsonAmount(carriage),
      tax: jsonAmount(tax),
    })),
  };
}

export function orderTable(build: Build, plan: Plan): Table {
  const order = orderOf(build, plan);
  const { standing } = build;
  return {
    title: `To order on ${build.today}`,
    columns: [
      column("quantity", "Qty", "right"),
      column("part", "Part"),
      column("number", "Number"),
      column("price", "Each", "right"),
      column("total", "Total", "right"),
      column("orderBy", "Order by"),
      column("needBy", "Needed by"),
    ],
    sections: order.sum.suppliers.map((supplier): TableSection => {
      const definition =
        supplier.supplier === undefined ? undefined : standing.names.named("supplier", supplier.supplier);
      return {
        heading: definition?.title ?? supplier.supplier ?? "No supplier named",
        rows: supplier.lines.map((line) => ({
          cells: {
            quantity: String(line.purchase.quantity),
            part: line.need.node.title ?? line.need.node.path,
            number: standing.definitions.one(line.need.node, "number")?.record.text ?? "",
            price: line.purchase.unitPrice === undefined ? "no price" : formatMoney(line.purchase.unitPrice),
            total: sayMoney(lineTotal(line)),
            orderBy: line.late
              ? { text: `${line.orderBy} late`, tone: "bad" as const }
              : (line.orderBy ?? ""),
            needBy: line.needBy ?? "",
          },
          remarks: remarksOf(build, line),
        })),
        foot: supplierSums(supplier),
      };
    }),
    notes: notesOf(order),
    cautions: [],
  };
}

function remarksOf(
  { today }: Build,
  { need, purchase: { packs }, why, late, leadDays }: OrderLine,
): string[] {
  const reasons = why.map(({ text, place }) => `${text} (${sayPlace(place)})`);
  const stock = need.inHand + need.onOrder === 0 ? [] : [`${need.inHand} in hand, ${need.onOrder} on order`];
  const packed =
    packs === undefined ? [] : [`${packs.count} ${packs.count === 1 ? "pack" : "packs"} of ${packs.size}`];
  const comes =
    late && leadDays !== undefined ? [`ordered today it comes on ${addDays(today, leadDays)}`] : [];
  return [`${need.node.path}: ${[...reasons, ...stock, ...packed, ...comes].join("; ")}`];
}

/** Goods, carriage, and what the smallest order lacks: in words, on one line. */
function supplierSums({ goods, carriage, minimum, unpriced }: SupplierOrder<OrderLine>): string[] {
  const sums = goods.map((sum) => `goods ${formatMoney(sum)}`);
  const sent = carriage === undefined ? [] : [`carriage ${formatMoney(carriage)}`];
  const open = unpriced === 0 ? [] : [`${unpriced} without a price`];
  const short =
    minimum?.kind === "short"
      ? [`${formatMoney(minimum.by)} short of the smallest order of ${formatMoney(minimum.minimum)}`]
      : [];
  const all = [...sums, ...sent, ...open, ...short];
  return all.length === 0 ? [] : [all.join(", ")];
}

function notesOf({ lines, sum }: Order): string[] {
  if (lines.length === 0) return ["There is nothing to order."];
  const totals = sum.totals.map(
    ({ goods, carriage, tax, amount }) =>
      `Total ${formatMoney(amount)}: goods ${formatMoney(goods)}, carriage ${formatMoney(carriage)}, tax ${formatMoney(tax)}.`,
  );
  const own =
    sum.own?.kind === "total" && sum.totals.length > 1
      ? [`In all ${formatMoney(sum.own.total.amount)} by the stated rates.`]
      : [];
  const open =
    sum.unpriced === 0
      ? []
      : [`${sum.unpriced} of ${lines.length} lines have no price: the order comes to more.`];
  return [...totals, ...own, ...open];
}

function sayMoney(money: Money | undefined): string {
  return money === undefined ? "" : formatMoney(money);
}
