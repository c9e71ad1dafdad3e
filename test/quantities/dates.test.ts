import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDuration, approximateDays } from "../../server/quantities/calendar-duration.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import {
  addCalendar,
  addDays,
  compareDates,
  daysBetween,
  fromDayNumber,
  isDateFault,
  laterDate,
  readDate,
  toDayNumber,
  WEEKDAYS,
  weekday,
} from "../../server/quantities/dates.ts";
import { q } from "./written.ts";

function on(text: string): IsoDate {
  const read = readDate(text);
  if (isDateFault(read)) throw new Error(read.message);
  return read;
}

describe("dates", () => {
  test("are ISO 8601 and exist", () => {
    expect(readDate("2026-05-02")).toBe("2026-05-02");
    expect(readDate("2024-02-29")).toBe("2024-02-29");
    expect(readDate("2000-02-29")).toBe("2000-02-29");
    expect(readDate("2026-02-30")).toMatchObject({ message: "2026-02 has no day 30: its last is 28" });
    expect(readDate("1900-02-29")).toMatchObject({ message: "1900-02 has no day 29: its last is 28" });
    expect(readDate("2026-13-01")).toMatchObject({ message: "there is no month 13" });
    expect(readDate("0000-01-01")).toMatchObject({ message: "there is no year 0000" });
  });

  // Days of the months: the Gregorian calendar, as ISO 8601 takes it.
  test("have the days that their month has", () => {
    const lasts = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    for (const [index, last] of lasts.entries()) {
      const month = `2026-${String(index + 1).padStart(2, "0")}`;
      expect(readDate(`${month}-${last}`)).toBe(`${month}-${last}`);
      expect(readDate(`${month}-${last + 1}`)).toEqual({
        fault: "bad-date",
        message: `${month} has no day ${last + 1}: its last is ${last}`,
        sure: false,
      });
    }
    expect(readDate("2026-05-00")).toMatchObject({ message: "2026-05 has no day 00: its last is 31" });
    expect(readDate("2026-00-10")).toMatchObject({ message: "there is no month 00" });
    expect(readDate("2026-12-31")).toBe("2026-12-31");
  });

  test("in another form are answered with the date that was meant", () => {
    expect(readDate("2026-5-2")).toMatchObject({ corrected: "2026-05-02", sure: true });
    expect(readDate("2026/05/02")).toMatchObject({ corrected: "2026-05-02", sure: true });
    expect(readDate("25.12.2026")).toMatchObject({ corrected: "2026-12-25", sure: true });
    expect(readDate("12/25/2026")).toMatchObject({ corrected: "2026-12-25", sure: true });
    expect(readDate("02/05/2026")).toMatchObject({ corrected: "2026-05-02", sure: false });
    expect(readDate("31/02/2026")).not.toHaveProperty("corrected");
    expect(readDate("12.11.2026")).toMatchObject({ corrected: "2026-11-12", sure: false });
    expect(readDate("5/12/2026")).toMatchObject({ corrected: "2026-12-05", sure: false });
    expect(readDate("5/5/2026")).toMatchObject({ corrected: "2026-05-05", sure: true });
    for (const text of ["yesterday", "2026/5/2"])
      expect(readDate(text)).toMatchObject({
        fault: "bad-date",
        message: "a date is written year-month-day: 2026-05-02",
        sure: text !== "yesterday",
      });
    expect([readDate("yesterday"), readDate("2026-05-02")].map(isDateFault)).toEqual([true, false]);
  });

  test("a missing day becomes the month's last", () => {
    expect(addCalendar(on("2026-01-31"), { months: 1 })).toBe("2026-02-28");
    expect(addCalendar(on("2024-02-29"), { years: 1 })).toBe("2025-02-28");
    expect(addCalendar(on("2026-03-31"), { months: -1 })).toBe("2026-02-28");
    expect(addCalendar(on("2026-01-31"), { months: 1, days: 1 })).toBe("2026-03-01");
    expect(addCalendar(on("2026-11-30"), { months: 3 })).toBe("2027-02-28");
    expect(addCalendar(on("2026-03-31"), { months: 1 })).toBe("2026-04-30");
    expect(addCalendar(on("2026-05-31"), { months: 1 })).toBe("2026-06-30");
    expect(addCalendar(on("2026-08-31"), { months: 1 })).toBe("2026-09-30");
    expect(addCalendar(on("2026-10-31"), { months: 1 })).toBe("2026-11-30");
  });

  test("order as their text does", () => {
    expect(compareDates(on("2026-05-02"), on("2026-05-02"))).toBe(0);
    expect(compareDates(on("2025-12-31"), on("2026-01-01"))).toBe(-1);
    expect(compareDates(on("2026-01-01"), on("2025-12-31"))).toBe(1);
    expect(laterDate(on("2025-12-31"), on("2026-01-01"))).toBe("2026-01-01");
    expect(laterDate(on("2026-01-01"), on("2025-12-31"))).toBe("2026-01-01");
  });

  test("stay within the years 0001 to 9999", () => {
    expect(addDays(on("9999-12-31"), 1)).toBe("9999-12-31");
    expect(addDays(on("0001-01-01"), -1e9)).toBe("0001-01-01");
    expect(addCalendar(on("9999-06-30"), { years: 5 })).toBe("9999-12-30");
    expect(addCalendar(on("0001-06-30"), { years: -5 })).toBe("0001-01-30");
  });
});

describe("checked against the calendar of ECMAScript (proleptic Gregorian, as ISO 8601)", () => {
  const days = fc.integer({ min: toDayNumber(on("0001-01-01")), max: toDayNumber(on("9999-12-31")) });
  const utc = (day: number) => new Date(day * 86_400_000);

  test("every day of 400 years, the period of the calendar", () => {
    const start = toDayNumber(on("1900-01-01"));
    const wrong: string[] = [];
    for (let day = start; day < start + 146_097; day++) {
      const date = fromDayNumber(day);
      if (date !== utc(day).toISOString().slice(0, 10) || toDayNumber(date) !== day) wrong.push(date);
    }
    expect(wrong).toEqual([]);
  });

  test("day numbers, differences and weekdays of any date", () => {
    fc.assert(
      fc.property(days, days, (a, b) => {
        const [from, to] = [fromDayNumber(a), fromDayNumber(b)];
        expect(from).toBe(utc(a).toISOString().slice(0, 10));
        expect(readDate(from)).toBe(from);
        expect(daysBetween(from, to)).toBe(b - a);
        expect(addDays(from, b - a)).toBe(to);
        expect(compareDates(from, to)).toBe(Math.sign(a - b));
        expect(WEEKDAYS.indexOf(weekday(from))).toBe((utc(a).getUTCDay() + 6) % 7);
      }),
    );
  });

  test("months later, the day held back to the month's last", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: toDayNumber(on("1800-01-01")), max: toDayNumber(on("2200-12-31")) }),
        fc.integer({ min: -1200, max: 1200 }),
        (day, months) => {
          const start = utc(day);
          const [year, month] = [start.getUTCFullYear(), start.getUTCMonth() + months];
          const last = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
          const expected = new Date(Date.UTC(year, month, Math.min(start.getUTCDate(), last)));
          expect(addCalendar(fromDayNumber(day), { months })).toBe(expected.toISOString().slice(0, 10));
        },
      ),
    );
  });
});

describe("durations from a date", () => {
  test("months and years are calendar steps, weeks and days are days", () => {
    expect(addDuration(on("2024-02-29"), q("5 year"))).toBe("2029-02-28");
    expect(addDuration(on("2026-01-31"), q("1 month"))).toBe("2026-02-28");
    expect(addDuration(on("2026-01-01"), q("1.5 year"))).toBe("2027-07-01");
    expect(addDuration(on("2026-01-01"), q("2 week"))).toBe("2026-01-15");
    expect(addDuration(on("2026-01-01"), q("48 h"))).toBe("2026-01-03");
  });

  test("only whole steps can be counted", () => {
    expect(addDuration(on("2026-01-01"), q("1.5 month"))).toMatchObject({ fault: "not-a-duration" });
    expect(addDuration(on("2026-01-01"), q("5 h"))).toMatchObject({ fault: "not-a-duration" });
    expect(addDuration(on("2026-01-01"), q("5 mm"))).toMatchObject({ fault: "not-a-duration" });
  });

  test("a mean year has 365.2425 days (Gregorian calendar: 97 leap days in 400 years)", () => {
    expect(approximateDays(q("1 year"))?.toString()).toBe("365.2425");
    expect(approximateDays(q("36 h"))?.toString()).toBe("1.5");
    expect(approximateDays(q("1 mm"))).toBeUndefined();
  });
});
