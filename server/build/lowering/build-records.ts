/** The records of vehicles, suppliers and gauges, from syntax to values. */
import type { Decimal } from "../../quantities/decimal.ts";
import type { Money } from "../../quantities/money.ts";
import { hasDimension } from "../../quantities/quantity.ts";
import { CALENDAR } from "./due.ts";
import { lowerLimitsWithUnit } from "./limits.ts";
import type { LowerTable } from "./record-forms.ts";
import { chosen, count, countFrom, date, money, saying, shareOfAll, text, whole } from "./record-forms.ts";
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
  currency: saying("currency", "word", (lowering, node) => lowering.currency(node)),
  rate: saying("rate", "exchange", (lowering, node) => {
    const read = whole({ from: lowering.money(node.from), to: lowering.money(node.to) });
    if (read === undefined) return undefined;
    const { from, to } = read;
    if (from.currency === to.currency)
      return lowering.complain(
        "unreadable-value",
        node.to.currency,
        `another currency than ${from.currency}`,
      );
    const without = isAboveNought(from) ? !isAboveNought(to) && node.to : node.from;
    if (without) return lowering.complain("unreadable-value", without, "an amount above nought");
    return { from: from.currency, to: to.currency, factor: to.amount.div(from.amount) };
  }),
  tax: shareOfAll,
  labour: saying("money", "money", (lowering, node) => {
    const read = lowering.sum(node);
    return read && { ...read, amount: byTheHour(read.amount, node.per ?? "h") };
  }),
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
  protrusion: saying("figure", "number", (lowering, node) => {
    const value = lowering.number(node)?.value;
    return value?.isNegative()
      ? lowering.complain("unreadable-value", node, "a number of pitches, not negative")
      : value;
  }),
  near: shareOfAll,
  past: chosen(["unknown", "known"]),
  today: date,
  lead: saying("days", "quantity", (lowering, node) => inDays(lowering, node)?.ceil().toNumber()),
  carriage: money,
  minimum: money,
  web: text,
  email: text,
  phone: text,
  reads: saying("ranges", "ranges", (lowering, { items }) => {
    const ranges = items.flatMap((item) => lowerLimitsWithUnit(lowering, item) ?? []);
    return ranges.length === 0 ? undefined : ranges;
  }),
  resolution: saying("quantity", "quantity", (lowering, node) => {
    const read = lowering.withUnit(node);
    return read && lowering.notNegative(node, read);
  }),
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

/** Exactly: what a minute costs is no fraction of an hour. */
function byTheHour(amount: Decimal, per: string): Decimal {
  if (per === "min") return amount.times(60);
  return per === "d" ? amount.div(24) : amount;
}

function isAboveNought({ amount }: Money): boolean {
  return amount.greaterThan(0);
}
