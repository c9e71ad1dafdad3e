/** The hours of work that the week has, turned into dates and back. */
import type { IsoDate, Weekday } from "../quantities/dates.ts";
import { compareDates, fromDayNumber, toDayNumber, WEEKDAYS } from "../quantities/dates.ts";
import type { Decimal } from "../quantities/decimal.ts";
import { decimal } from "../quantities/decimal.ts";
import { UNITY } from "../quantities/rational.ts";
import type { Hours } from "./hours.ts";
import {
  addHours,
  compareHours,
  greaterHours,
  hours,
  lesserHours,
  NO_HOURS,
  subtractHours,
  timesHours,
} from "./hours.ts";

/** The hours that one pair of hands has on each day of the week; a day that is absent has none. */
export type Week = Readonly<Partial<Record<Weekday, Decimal>>>;

export const DEFAULT_WEEK: Week = { sat: decimal(6), sun: decimal(4) };

/** Both days included. */
export interface ClosedRange {
  readonly from: IsoDate;
  readonly to: IsoDate;
}

export interface WorkingTime {
  readonly week: Week;
  readonly closed: readonly ClosedRange[];
  readonly today: IsoDate;
  /** Hours of today that each pair of hands has behind it. */
  readonly bookedToday: Decimal;
}

/** A day, and the hours of work that have passed on it. */
export interface Moment {
  readonly date: IsoDate;
  readonly hour: Hours;
}

/** -1, 0 or 1 as the first is earlier, the same or later. */
export function compareMoments(a: Moment, b: Moment): -1 | 0 | 1 {
  return a.date === b.date ? compareHours(a.hour, b.hour) : compareDates(a.date, b.date);
}

export function laterMoment(a: Moment, b: Moment): Moment {
  return compareMoments(a, b) < 0 ? b : a;
}

/** The beginning of a day. */
export function dawn(date: IsoDate): Moment {
  return { date, hour: NO_HOURS };
}

/** 1970-01-01, from which days are numbered, was a Thursday. */
const WEEKDAY_OF_DAY_ZERO = 3;
const SEVENTH: Hours = { numerator: 1n, denominator: 7n };
const FIRST_DAY = toDayNumber("0001-01-01" as IsoDate);
const LAST_DAY = toDayNumber("9999-12-31" as IsoDate);

/**
 * Counts hours of work from the start of the plan: today, behind the hours that are already booked. Days before today
 * have negative hours. Inside, hours are whole numbers of one small share of an hour, so that nothing is rounded and
 * little is divided.
 */
export class WorkingCalendar {
  /** Where the plan starts. */
  readonly start: Moment;

  private readonly today: number;
  private readonly booked: Hours;
  private readonly sharesInHour: bigint;
  /** Shares of an hour from Monday up to each day of the week, and over the whole of it at the end. */
  private readonly sharesBefore: readonly bigint[];
  /** Of today, behind us; never more than today has. */
  private readonly sharesBooked: bigint;
  /** Day numbers, the second not included, in order and apart. */
  private readonly closed: readonly (readonly [number, number])[];

  constructor({ week, closed, today, bookedToday }: WorkingTime) {
    this.today = toDayNumber(today);
    this.booked = hours(bookedToday);
    this.start = { date: today, hour: this.booked };
    const days = WEEKDAYS.map((day) => hours(week[day] ?? 0));
    this.sharesInHour = [...days, this.booked].reduce(
      (common, { denominator }) => leastMultiple(common, denominator),
      1n,
    );
    const sums = [0n];
    for (const day of days) sums.push((sums.at(-1) ?? 0n) + this.inShares(day));
    this.sharesBefore = sums;
    this.closed = merged(closed);
    this.sharesBooked = this.inShares(lesserHours(this.booked, this.hoursOn(today)));
  }

  /** Hours of the whole day for one pair of hands. */
  hoursOn(date: IsoDate): Hours {
    const day = toDayNumber(date);
    return this.inHours(this.sharesUntil(day + 1) - this.sharesUntil(day));
  }

  /** Hours of work from the start of the plan; negative before it. */
  hoursUntil({ date, hour }: Moment): Hours {
    const day = toDayNumber(date);
    const begun = this.inHours(this.sharesFromStart(day));
    const ended = this.inHours(this.sharesFromStart(day + 1));
    const passed = addHours(begun, day === this.today ? subtractHours(hour, this.booked) : hour);
    return greaterHours(begun, lesserHours(passed, ended));
  }

  /** Where work begins that so many hours go before; undefined where the calendar has no such hours. */
  workBegins(after: Hours): Moment | undefined {
    const day = this.firstDay(after.numerator < 0n ? FIRST_DAY : this.today, after, 1);
    return day === undefined ? undefined : this.momentOn(day, after);
  }

  /** Where the last of so many hours ends, not before the start of the plan; undefined where there are not as many. */
  workEnds(after: Hours): Moment | undefined {
    const day = this.firstDay(this.today, after, 0);
    return day === undefined ? undefined : this.momentOn(day, after);
  }

  /** The hours of work that the week has, on the average, in so many calendar days. */
  hoursInDays(days: Hours): Hours {
    return timesHours(timesHours(this.inHours(this.sharesBefore[7] ?? 0n), days), SEVENTH);
  }

  private momentOn(day: number, after: Hours): Moment {
    const passed = subtractHours(after, this.inHours(this.sharesFromStart(day)));
    return { date: fromDayNumber(day), hour: day === this.today ? addHours(passed, this.booked) : passed };
  }

  /** The first day from the earliest on at whose end the hours are reached (0), or passed (1). */
  private firstDay(earliest: number, after: Hours, reach: 0 | 1): number | undefined {
    const target = after.numerator * this.sharesInHour + BigInt(reach);
    const reached = (day: number) => this.sharesFromStart(day + 1) * after.denominator >= target;
    let [low, high] = [earliest, LAST_DAY];
    if (!reached(high)) return undefined;
    while (low < high) {
      const middle = Math.floor((low + high) / 2);
      if (reached(middle)) high = middle;
      else low = middle + 1;
    }
    return low;
  }

  /** Shares of an hour from the start of the plan to the beginning of a day. */
  private sharesFromStart(day: number): bigint {
    const shares = this.sharesUntil(day) - this.sharesUntil(this.today);
    return day > this.today ? shares - this.sharesBooked : shares;
  }

  /** Shares of an hour before a day, from a fixed day on, without those of closed days. */
  private sharesUntil(day: number): bigint {
    let shares = this.sharesOfWeeks(day);
    for (const [from, to] of this.closed) {
      if (from >= day) break;
      shares -= this.sharesOfWeeks(Math.min(day, to)) - this.sharesOfWeeks(from);
    }
    return shares;
  }

  private sharesOfWeeks(day: number): bigint {
    const fromMonday = day + WEEKDAY_OF_DAY_ZERO;
    const weeks = Math.floor(fromMonday / 7);
    return BigInt(weeks) * (this.sharesBefore[7] ?? 0n) + (this.sharesBefore[fromMonday - weeks * 7] ?? 0n);
  }

  private inShares(time: Hours): bigint {
    return (time.numerator * this.sharesInHour) / time.denominator;
  }

  private inHours(shares: bigint): Hours {
    return timesHours({ numerator: shares, denominator: this.sharesInHour }, UNITY);
  }
}

function merged(closed: readonly ClosedRange[]): readonly (readonly [number, number])[] {
  const ranges = closed
    .map(({ from, to }): [number, number] => [toDayNumber(from), toDayNumber(to) + 1])
    .filter(([from, to]) => from < to)
    .sort(([a], [b]) => a - b);
  const apart: [number, number][] = [];
  for (const range of ranges) {
    const last = apart.at(-1);
    if (last !== undefined && range[0] <= last[1]) last[1] = Math.max(last[1], range[1]);
    else apart.push(range);
  }
  return apart;
}

function leastMultiple(a: bigint, b: bigint): bigint {
  let [greater, less] = [a, b];
  while (less !== 0n) [greater, less] = [less, greater % less];
  return (a / greater) * b;
}
