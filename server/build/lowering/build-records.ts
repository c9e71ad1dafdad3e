/** The records of vehicles, suppliers and gauges, from syntax to values. */
import type { Decimal } from "../../quantities/decimal.ts";
import { decimal } from "../../quantities/decimal.ts";
import { hasDimension } from "../../quantities/quantity.ts";
import { CALENDAR } from "./due.ts";
import { lowerLimitsWithUnit } from "./limits.ts";
import type { LowerTable } from "./record-forms.ts";
import { chosen, count, countFrom, date, money, shareOfAll, text } from "./record-forms.ts";
import { inDays, inHours } from "./times.ts";

type Word =
  | "chassis"
  | "year"
  | "currency"
  | "rate"
  | "tax"
  | "labour"
  | "budget"
  | "week"
  | "hands"
  | "closed"
  | "protrusion"
  | "near"
  | "past"
  | "today"
  | "lead"
  | "carriage"
  | "minimum"
  | "web"
  | "email"
  | "phone"
  | "reads"
  | "resolution"
  | "uncertainty"
  | "calibrated";

export const BUILD_RECORDS: LowerTable<Word> = {
  chassis: text,
  year: count,
  currency: (lowering, values) => {
    const node = values.get("value", "word");
    const currency = node && lowering.currency(node);
    return currency === undefined ? undefined : { currency };
  },
  rate: (lowering, values) => {
    const node = values.get("value", "exchange");
    const from = node && lowering.money(node.from);
    const to = node && lowering.money(node.to);
    if (from === undefined || to === undefined || node === undefined) return undefined;
    if (from.currency === to.currency)
      return lowering.complain(
        "unreadable-value",
        node.to.currency,
        `another currency than ${from.currency}`,
      );
    const without = [node.from, node.to].find((_, index) => !isAboveNought([from, to][index]?.amount));
    if (without !== undefined)
      return lowering.complain("unreadable-value", without, "an amount above nought");
    return { rate: { from: from.currency, to: to.currency, factor: to.amount.div(from.amount) } };
  },
  tax: shareOfAll,
  labour: (lowering, values) => {
    const node = values.get("value", "money");
    const read = node && lowering.sum(node);
    if (read === undefined) return undefined;
    const hours: Readonly<Record<string, number>> = { h: 1, min: 1 / 60, d: 24 };
    return { money: { ...read, amount: read.amount.div(decimal(hours[node?.per ?? "h"] ?? 1)) } };
  },
  budget: money,
  week: (lowering, values) => {
    const days = values
      .get("value", "week")
      ?.days.map(({ day, hours }) => ({ day: day.text, hours: inHours(lowering, hours) }));
    if (days === undefined || days.some(({ hours }) => hours === undefined)) return undefined;
    return { days: days as { day: string; hours: Decimal }[] };
  },
  hands: countFrom(1),
  closed: (lowering, values) => {
    const range = values.get("value", "dateRange");
    if (range === undefined) {
      const day = values.get("value", "date");
      return day && { from: lowering.date(day), to: lowering.date(day) };
    }
    const [from, to] = [lowering.date(range.from), lowering.date(range.to)];
    return from <= to
      ? { from, to }
      : lowering.complain("unreadable-value", range.to, `a day that is not before ${from}`);
  },
  protrusion: (lowering, values) => {
    const node = values.get("value", "number");
    const read = node && lowering.number(node);
    if (node === undefined || read === undefined) return undefined;
    return read.value.isNegative()
      ? lowering.complain("unreadable-value", node, "a number of pitches, not negative")
      : { figure: read.value };
  },
  near: (lowering, values) => {
    const read = shareOfAll(lowering, values);
    return read && { share: read.share };
  },
  past: chosen(["unknown", "known"]),
  today: date,
  lead: (lowering, values) => {
    const node = values.get("value", "quantity");
    const days = node && inDays(lowering, node);
    return days === undefined ? undefined : { days: days.ceil().toNumber() };
  },
  carriage: money,
  minimum: money,
  web: text,
  email: text,
  phone: text,
  reads: (lowering, values) => {
    const items = values.get("value", "ranges")?.items ?? [];
    const ranges = items.flatMap((item) => lowerLimitsWithUnit(lowering, item) ?? []);
    return ranges.length === 0 ? undefined : { ranges };
  },
  resolution: (lowering, values) => {
    const node = values.get("value", "quantity");
    const read = node && lowering.withUnit(node);
    const quantity = node && read && lowering.notNegative(node, read);
    return quantity && { quantity };
  },
  uncertainty: (lowering, values) => {
    const node = values.get("value", "tolerance");
    const quantity = node && lowering.withUnit(node.value);
    return quantity && { quantity, ofReading: values.has("ofReading") || hasDimension(quantity, "ratio") };
  },
  calibrated: (lowering, values) => {
    const node = values.get("date", "date");
    const valid = values.get("for", "quantity");
    return node && { date: lowering.date(node), valid: valid && lowering.amount(valid, CALENDAR) };
  },
};

function isAboveNought(amount: Decimal | undefined): boolean {
  return amount !== undefined && !amount.isNegative() && !amount.isZero();
}
