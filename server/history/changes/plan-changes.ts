/** What is to be ordered and when it will be done, by the one revision and by the other. */
import type { Build } from "../../build/build.ts";
import type { Place } from "../../build/source.ts";
import type { OrderLine } from "../../plan/order.ts";
import { orderOf } from "../../plan/order.ts";
import type { Plan } from "../../plan/plan.ts";
import { formatMoney } from "../../quantities/money.ts";
import type { Change } from "./change.ts";
import { change, inAfter, inBefore } from "./change.ts";
import type { Renames } from "./things.ts";

export interface PlannedBuild {
  readonly build: Build;
  readonly plan: Plan;
}

export function planChanges(before: PlannedBuild, after: PlannedBuild, renames: Renames): Change[] {
  return [
    ...orderChanges(before, after, renames),
    ...forecastChanges(before.plan, after.plan),
    ...holdChanges(before, after, renames),
  ];
}

function orderChanges(before: PlannedBuild, after: PlannedBuild, renames: Renames): Change[] {
  const [was, is] = [orderOf(before.build, before.plan), orderOf(after.build, after.plan)];
  const old = new Map(was.lines.map((line) => [renames.of("part", line.need.node.path), line]));
  const later = new Map(is.lines.map((line) => [line.need.node.path, line]));
  const lines = [...new Set([...old.keys(), ...later.keys()])].flatMap((ref) =>
    lineChanges(ref, old.get(ref), later.get(ref)),
  );
  return [...lines, ...totalChanges(was.sum.totals, is.sum.totals)];
}

function lineChanges(ref: string, old: OrderLine | undefined, later: OrderLine | undefined): Change[] {
  const about = { ref, what: "part", title: (later ?? old)?.need.node.title } as const;
  const [before, after] = [old && sayLine(old), later && sayLine(later)];
  if (before === after) return [];
  if (later === undefined)
    return [change({ ...about, kind: "order-removed", before, at: inBefore(old && placeOf(old)) })];
  const kind = old === undefined ? "order-added" : "order-changed";
  return [change({ ...about, kind, before, after, at: inAfter(placeOf(later)) })];
}

function placeOf({ why, need }: OrderLine): Place | undefined {
  return why[0]?.place ?? need.node.header;
}

function sayLine({ purchase: { quantity }, supplier, orderBy, late }: OrderLine): string {
  const from = supplier === undefined ? "" : ` from ${supplier}`;
  return `${quantity}${from}${orderBy === undefined ? "" : `, by ${orderBy}${late ? ", late" : ""}`}`;
}

type Totals = readonly { readonly amount: Parameters<typeof formatMoney>[0] }[];

function totalChanges(was: Totals, is: Totals): Change[] {
  const said = (totals: Totals) =>
    new Map(totals.map(({ amount }) => [amount.currency as string, formatMoney(amount)]));
  const [old, later] = [said(was), said(is)];
  return [...new Set([...old.keys(), ...later.keys()])].flatMap((currency) => {
    const [before, after] = [old.get(currency), later.get(currency)];
    return before === after
      ? []
      : [change({ kind: "order-total", ref: currency, what: "order", before, after })];
  });
}

function forecastChanges(was: Plan, is: Plan): Change[] {
  const [before, after] = [sayForecast(was), sayForecast(is)];
  return before === after
    ? []
    : [change({ kind: "forecast-moved", ref: "vehicle", what: "build", before, after })];
}

function sayForecast({ forecast }: Plan): string | undefined {
  return forecast && `${forecast.finish50.date} at even odds, ${forecast.finish90.date} at nine in ten`;
}

function holdChanges(before: PlannedBuild, after: PlannedBuild, renames: Renames): Change[] {
  const old = new Map(expectedHolds(before).map(({ name, date }) => [renames.of("hold", name), date]));
  return expectedHolds(after).flatMap(({ name, title, header, date }) => {
    const was = old.get(name);
    if (was === undefined || was === date) return [];
    const about = { kind: "hold-moved", ref: name, what: "hold", title } as const;
    return [change({ ...about, before: was, after: date, at: inAfter(header) })];
  });
}

function expectedHolds({ build: { standing }, plan }: PlannedBuild) {
  return [...standing.holds.keys()].flatMap(({ name, title, header }) => {
    const date = plan.levelled.levelled.get(name)?.finish.date;
    return date === undefined ? [] : [{ name, title, header, date: date as string }];
  });
}
