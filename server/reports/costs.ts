/** Money and hours by assembly, supplier and month, against the budget. */
import type { Build } from "../build/build.ts";
import type { Cost, Costs } from "../plan/costs.ts";
import { costsOf } from "../plan/costs.ts";
import type { Decimal } from "../quantities/decimal.ts";
import { formatDecimal, ZERO } from "../quantities/decimal.ts";
import type { Money } from "../quantities/money.ts";
import { formatMoney, subtractMoney, timesMoney } from "../quantities/money.ts";
import type { JsonMoney } from "./json-values.ts";
import { jsonMoney } from "./json-values.ts";
import type { Table, TableSection } from "./table.ts";
import { column } from "./table.ts";

export interface CostsReport {
  readonly schema: "cotter/costs/1";
  readonly byAssembly: readonly CostGroup[];
  readonly bySupplier: readonly CostGroup[];
  readonly byMonth: readonly CostGroup[];
  readonly total: JsonMoney | null;
  readonly budget: JsonMoney | null;
  readonly left: JsonMoney | null;
  readonly hours: number;
  readonly labour: JsonMoney | null;
  readonly unpriced: number;
  readonly withoutRate: readonly string[];
}

/** One currency of one group: goods, outside work and other spending without tax, the tax, and hours worked. */
interface CostGroup {
  readonly name: string;
  readonly currency: string | null;
  readonly goods: JsonMoney | null;
  readonly outsideWork: JsonMoney | null;
  readonly other: JsonMoney | null;
  readonly tax: JsonMoney | null;
  readonly total: JsonMoney | null;
  readonly hours: number;
}

interface Group {
  readonly name: string;
  readonly sums: ReadonlyMap<string, Readonly<Record<Cost["kind"] | "tax" | "total", Money>>>;
  readonly hours: Decimal;
}

export function costsReport(build: Build): CostsReport {
  const costs = costsOf(build);
  const hours = costs.hours.reduce((sum, { hours: own }) => sum.plus(own), ZERO);
  return {
    schema: "cotter/costs/1",
    byAssembly: groupsBy(costs, assemblyOf, assemblyOf).flatMap(jsonGroups),
    bySupplier: groupsBy(costs, ({ supplier }) => supplier ?? "no supplier named", undefined).flatMap(
      jsonGroups,
    ),
    byMonth: groupsBy(costs, monthOf, monthOf).flatMap(jsonGroups),
    total: jsonMoney(costs.total),
    budget: jsonMoney(costs.budget),
    left: jsonMoney(leftOf(costs)),
    hours: hours.toNumber(),
    labour: jsonMoney(costs.labour && timesMoney(costs.labour, hours)),
    unpriced: costs.unpriced.length,
    withoutRate: costs.withoutRate,
  };
}

export function costsTable(build: Build): Table {
  const costs = costsOf(build);
  return {
    title: `Costs of ${build.standing.gathered.vehicle.title ?? "the build"} to ${build.today}`,
    columns: [
      column("name", ""),
      column("goods", "Goods", "right"),
      column("outside", "Outside work", "right"),
      column("other", "Other", "right"),
      column("tax", "Tax", "right"),
      column("total", "Total", "right"),
      column("hours", "Hours", "right"),
    ],
    sections: [
      section("By assembly", groupsBy(costs, assemblyOf, assemblyOf)),
      section(
        "By supplier",
        groupsBy(costs, ({ supplier }) => supplier ?? "no supplier named", undefined),
      ),
      section("By month", groupsBy(costs, monthOf, monthOf)),
    ].filter(({ rows }) => rows.length > 0),
    notes: notesOf(costs),
    cautions: [],
  };
}

/** The first name of a path: where in the vehicle it belongs. */
function assemblyOf({ node }: { readonly node: { readonly path: string } | undefined }): string {
  return node?.path.split(".")[0] ?? "the whole";
}

function monthOf({ date }: { readonly date: string }): string {
  return date.slice(0, 7);
}

function groupsBy(
  { costs, hours }: Costs,
  nameOf: (cost: Cost) => string,
  nameOfHours: ((worked: Costs["hours"][number]) => string) | undefined,
): Group[] {
  const names = new Set([...costs.map(nameOf), ...(nameOfHours === undefined ? [] : hours.map(nameOfHours))]);
  return [...names].sort().map((name) => ({
    name,
    sums: sumsOf(costs.filter((cost) => nameOf(cost) === name)),
    hours: hours
      .filter((worked) => nameOfHours?.(worked) === name)
      .reduce((sum, { hours: own }) => sum.plus(own), ZERO),
  }));
}

function sumsOf(costs: readonly Cost[]): Group["sums"] {
  const sums = new Map<string, Record<Cost["kind"] | "tax" | "total", Money>>();
  for (const { kind, money, tax } of costs) {
    const none: Money = { amount: ZERO, currency: money.currency };
    const sum = sums.get(money.currency) ?? {
      goods: none,
      "outside work": none,
      other: none,
      tax: none,
      total: none,
    };
    const plus = (a: Money, b: Money): Money => ({ ...a, amount: a.amount.plus(b.amount) });
    sum[kind] = plus(sum[kind], money);
    sum.tax = plus(sum.tax, tax);
    sum.total = plus(plus(sum.total, money), tax);
    sums.set(money.currency, sum);
  }
  return sums;
}

function jsonGroups({ name, sums, hours }: Group): CostGroup[] {
  const rows = [...sums].map(
    ([currency, sum], index): CostGroup => ({
      name,
      currency,
      goods: jsonMoney(sum.goods),
      outsideWork: jsonMoney(sum["outside work"]),
      other: jsonMoney(sum.other),
      tax: jsonMoney(sum.tax),
      total: jsonMoney(sum.total),
      hours: index === 0 ? hours.toNumber() : 0,
    }),
  );
  if (rows.length > 0) return rows;
  return [
    {
      name,
      currency: null,
      goods: null,
      outsideWork: null,
      other: null,
      tax: null,
      total: null,
      hours: hours.toNumber(),
    },
  ];
}

function section(heading: string, groups: readonly Group[]): TableSection {
  const rows = groups.flatMap(({ name, sums, hours }) => {
    const said = hours.isZero() ? "" : formatDecimal(hours);
    if (sums.size === 0) return [{ cells: { name, hours: said } }];
    return [...sums.values()].map((sum, index) => ({
      cells: {
        name,
        goods: sayUnlessNone(sum.goods),
        outside: sayUnlessNone(sum["outside work"]),
        other: sayUnlessNone(sum.other),
        tax: sayUnlessNone(sum.tax),
        total: formatMoney(sum.total),
        hours: index === 0 ? said : "",
      },
    }));
  });
  return { heading, rows };
}

function notesOf(costs: Costs): string[] {
  const { total, budget, unpriced, withoutRate, hours, labour } = costs;
  const worked = hours.reduce((sum, { hours: own }) => sum.plus(own), ZERO);
  const left = leftOf(costs);
  return [
    ...(total === undefined ? [] : [`Total ${formatMoney(total)}, tax included.`]),
    ...(budget === undefined || left === undefined
      ? []
      : [
          left.amount.isNegative()
            ? `Over the budget of ${formatMoney(budget)} by ${formatMoney(timesMoney(left, -1))}.`
            : `Budget ${formatMoney(budget)}: ${formatMoney(left)} left.`,
        ]),
    ...(worked.isZero()
      ? []
      : [
          `Hours worked ${formatDecimal(worked)}${labour === undefined ? "" : `, at ${formatMoney(labour)} an hour ${formatMoney(timesMoney(labour, worked))} (not in the total)`}.`,
        ]),
    ...(unpriced.length === 0
      ? []
      : [`${unpriced.length} ${unpriced.length === 1 ? "purchase has" : "purchases have"} no price.`]),
    ...(withoutRate.length === 0
      ? []
      : [`Without a rate, and so not in the total: ${withoutRate.join(", ")}.`]),
    "Prices of goods are without tax, which is added to them; bills and spending stand as written. Of outside work the bill counts, else the quotation.",
  ];
}

function leftOf({ total, budget }: Costs): Money | undefined {
  if (total === undefined || budget === undefined) return undefined;
  const left = subtractMoney(budget, total);
  return "fault" in left ? undefined : left;
}

function sayUnlessNone(money: Money): string {
  return money.amount.isZero() ? "" : formatMoney(money);
}
