/**
 * Calendar dates of ISO 8601 in the proleptic Gregorian calendar, years 0001 to 9999. Plain whole-number arithmetic:
 * a date library would cost more at start-up than all other modules of this floor together.
 */

declare const dateBrand: unique symbol;
/** `2026-05-02`: a date that exists. Dates compare by their text. */
export type IsoDate = string & { readonly [dateBrand]: true };

export type Weekday = "mon" | "tue" | "wed" | "thu" | "fri" | "sat" | "sun";
export const WEEKDAYS: readonly Weekday[] = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

/** Whole calendar steps. */
export interface CalendarStep {
  readonly years?: number;
  readonly months?: number;
  readonly days?: number;
}

/** Why a text is no date, with what was probably meant; `sure`: there is one reading only. */
export interface DateFault {
  readonly fault: "bad-date";
  readonly message: string;
  readonly corrected?: string;
  readonly sure: boolean;
}

/** Days in the 400 years after which the Gregorian calendar repeats. */
const DAYS_IN_ERA = 146097;
/** Days from 0000-03-01, where the eras start, to 1970-01-01. */
const DAYS_BEFORE_1970 = 719468;

const ISO = /^([0-9]{4})-([0-9]{2})-([0-9]{2})$/;
const YEAR_FIRST = /^([0-9]{4})[-/.]([0-9]{1,2})[-/.]([0-9]{1,2})$/;
const YEAR_LAST = /^([0-9]{1,2})[-/.]([0-9]{1,2})[-/.]([0-9]{4})$/;
const FIRST_DAY = dayNumber(1, 1, 1);
const LAST_DAY = dayNumber(9999, 12, 31);

/** Reads `2026-05-02` and no other form; a fault offers the date that was probably meant. */
export function readDate(text: string): IsoDate | DateFault {
  const match = ISO.exec(text);
  if (match === null) return misshapen(text);
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  if (year === 0) return badDate("there is no year 0000");
  if (month < 1 || month > 12) return badDate(`there is no month ${match[2]}`);
  const last = daysInMonth(year, month);
  if (day >= 1 && day <= last) return text as IsoDate;
  return badDate(`${match[1]}-${match[2]} has no day ${match[3]}: its last is ${last}`);
}

/** Whether `readDate` gave a fault. */
export function isDateFault(read: IsoDate | DateFault): read is DateFault {
  return typeof read !== "string";
}

/** So many days later, or earlier where negative; the calendar ends at 0001-01-01 and 9999-12-31. */
export function addDays(date: IsoDate, days: number): IsoDate {
  return fromDayNumber(toDayNumber(date) + Math.trunc(days));
}

/** Years and months first, a missing day becoming the month's last (31 January and a month is 28 or 29 February), then days. */
export function addCalendar(date: IsoDate, step: CalendarStep): IsoDate {
  const { year, month, day } = parts(date);
  const count = year * 12 + (month - 1) + (step.years ?? 0) * 12 + (step.months ?? 0);
  const target = Math.min(Math.max(count, 12), 9999 * 12 + 11);
  const [toYear, toMonth] = [Math.floor(target / 12), (target % 12) + 1];
  const moved = dayNumber(toYear, toMonth, Math.min(day, daysInMonth(toYear, toMonth)));
  return fromDayNumber(moved + (step.days ?? 0));
}

/** Days from one date to another, negative when the second is earlier. */
export function daysBetween(from: IsoDate, to: IsoDate): number {
  return toDayNumber(to) - toDayNumber(from);
}

export function weekday(date: IsoDate): Weekday {
  return WEEKDAYS[(((toDayNumber(date) + 3) % 7) + 7) % 7] as Weekday;
}

/** -1, 0 or 1 as the first date is earlier, the same or later. */
export function compareDates(a: IsoDate, b: IsoDate): -1 | 0 | 1 {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

/** The later of two dates. */
export function laterDate(a: IsoDate, b: IsoDate): IsoDate {
  return a < b ? b : a;
}

/** Days since 1970-01-01, for arithmetic over many dates. */
export function toDayNumber(date: IsoDate): number {
  const { year, month, day } = parts(date);
  return dayNumber(year, month, day);
}

/** The date of a day since 1970-01-01, kept within the years 0001 to 9999. */
export function fromDayNumber(number: number): IsoDate {
  const days = Math.min(Math.max(Math.trunc(number), FIRST_DAY), LAST_DAY) + DAYS_BEFORE_1970;
  const era = Math.floor(days / DAYS_IN_ERA);
  const dayOfEra = days - era * DAYS_IN_ERA;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const fromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * fromMarch + 2) / 5) + 1;
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return `${padded(year, 4)}-${padded(month, 2)}-${padded(day, 2)}` as IsoDate;
}

/** Days since 1970-01-01. Years are counted from March, so that the leap day is the last of its year. */
function dayNumber(year: number, month: number, day: number): number {
  const marchYear = month <= 2 ? year - 1 : year;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const fromMarch = month > 2 ? month - 3 : month + 9;
  const dayOfYear = Math.floor((153 * fromMarch + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * DAYS_IN_ERA + dayOfEra - DAYS_BEFORE_1970;
}

function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

function parts(date: IsoDate): { year: number; month: number; day: number } {
  return { year: Number(date.slice(0, 4)), month: Number(date.slice(5, 7)), day: Number(date.slice(8, 10)) };
}

function padded(number: number, length: number): string {
  return String(number).padStart(length, "0");
}

function badDate(message: string, corrected?: string, sure = false): DateFault {
  return { fault: "bad-date", message, sure, ...(corrected === undefined ? {} : { corrected }) };
}

function misshapen(text: string): DateFault {
  const yearFirst = YEAR_FIRST.exec(text);
  if (yearFirst !== null) return offered(yearFirst[1], yearFirst[2], yearFirst[3], true);
  const yearLast = YEAR_LAST.exec(text);
  if (yearLast !== null) {
    const [, first = "", second = "", year] = yearLast;
    if (Number(first) > 12) return offered(year, second, first, true);
    if (Number(second) > 12) return offered(year, first, second, true);
    return offered(year, second, first, first === second);
  }
  return badDate("a date is written year-month-day: 2026-05-02");
}

function offered(year = "", month = "", day = "", sure = false): DateFault {
  const corrected = `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
  const exists = typeof readDate(corrected) === "string";
  return badDate(
    "a date is written year-month-day: 2026-05-02",
    exists ? corrected : undefined,
    exists && sure,
  );
}
