/** Days along a line: where each lies, and which are named. */
import type { IsoDate } from "../quantities/dates.ts";
import { addCalendar, addDays, daysBetween, WEEKDAYS, weekday } from "../quantities/dates.ts";

export interface TimeScale {
  readonly from: IsoDate;
  /** The last day that is drawn. */
  readonly to: IsoDate;
  readonly left: number;
  readonly right: number;
}

/** A day with a line of its own, and its name; none where it has no room before the end. */
export interface Tick {
  readonly date: IsoDate;
  readonly label: string;
}

/** Where a day begins; outside the scale, at its end. */
export function dayBegins({ from, to, left, right }: TimeScale, date: IsoDate): number {
  const share = daysBetween(from, date) / (daysBetween(from, to) + 1);
  return left + (right - left) * Math.min(1, Math.max(0, share));
}

/** Where a day ends. */
export function dayEnds(scale: TimeScale, date: IsoDate): number {
  return date > scale.to ? scale.right : dayBegins(scale, addDays(date, 1));
}

type Step =
  | { readonly unit: "day"; readonly days: number }
  | { readonly unit: "week"; readonly days: number }
  | { readonly unit: "month"; readonly months: number };

const STEPS: readonly Step[] = [
  { unit: "day", days: 1 },
  { unit: "day", days: 2 },
  { unit: "week", days: 7 },
  { unit: "week", days: 14 },
  { unit: "month", months: 1 },
  { unit: "month", months: 3 },
  { unit: "month", months: 6 },
  { unit: "month", months: 12 },
  { unit: "month", months: 60 },
  { unit: "month", months: 1200 },
  { unit: "month", months: 12000 },
];

/** Days, Mondays or first days of months, as close as labels so wide allow. */
export function ticks(scale: TimeScale, labelWidth: number): readonly Tick[] {
  const perDay = (scale.right - scale.left) / (daysBetween(scale.from, scale.to) + 1);
  const step = STEPS.find((one) => shortestDays(one) * perDay >= labelWidth) ?? STEPS.at(-1);
  if (step === undefined) return [];
  const found: Tick[] = [];
  let date: IsoDate | undefined = firstAt(step, scale.from);
  while (date !== undefined && date <= scale.to) {
    const hasRoom = dayBegins(scale, date) + labelWidth <= scale.right;
    found.push({ date, label: hasRoom ? nameOf(step, date) : "" });
    date = nextAt(step, date);
  }
  return found;
}

function nameOf(step: Step, date: IsoDate): string {
  return step.unit === "month" ? date.slice(0, 7) : date;
}

function shortestDays(step: Step): number {
  return step.unit === "month" ? step.months * 28 : step.days;
}

function firstAt(step: Step, from: IsoDate): IsoDate | undefined {
  if (step.unit === "day") return from;
  if (step.unit === "week") return onward(from, (WEEKDAYS.length - WEEKDAYS.indexOf(weekday(from))) % 7);
  let first: IsoDate | undefined = `${from.slice(0, 4)}-01-01` as IsoDate;
  while (first !== undefined && first < from) first = nextAt(step, first);
  return first;
}

function nextAt(step: Step, date: IsoDate): IsoDate | undefined {
  if (step.unit !== "month") return onward(date, step.days);
  const next = addCalendar(date, { months: step.months });
  return monthNumber(next) - monthNumber(date) < step.months ? undefined : next;
}

function monthNumber(date: IsoDate): number {
  return Number(date.slice(0, 4)) * 12 + Number(date.slice(5, 7));
}

/** So many days later; undefined where the calendar ends before. */
function onward(date: IsoDate, days: number): IsoDate | undefined {
  const next = addDays(date, days);
  return daysBetween(date, next) < days ? undefined : next;
}
