import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addHours, compareHours, hours, NO_HOURS } from "../../server/plan/hours.ts";
import type { Week } from "../../server/plan/working-calendar.ts";
import { compareMoments, dawn } from "../../server/plan/working-calendar.ts";
import type { Weekday } from "../../server/quantities/dates.ts";
import { decimal } from "../../server/quantities/decimal.ts";
import { calendarOf, date, momentText, numberOf } from "./planned.ts";

describe("the week", () => {
  // Saturday 2 May 2026 holds hours 0 to 6 of the plan, Sunday 6 to 10, the next Saturday 10 to 16.
  const calendar = calendarOf();

  test.each([
    [0, "2026-05-02 0"],
    [5.5, "2026-05-02 5.5"],
    [6, "2026-05-03 0"],
    [10, "2026-05-09 0"],
    [521, "2027-05-01 1"],
  ])("begins work after %d hours on %s", (after, moment) => {
    expect(momentText(calendar.workBegins(hours(after)))).toBe(moment);
  });

  test.each([
    [0, "2026-05-02 0"],
    [6, "2026-05-02 6"],
    [6.25, "2026-05-03 0.25"],
    [10, "2026-05-03 4"],
    [16, "2026-05-09 6"],
  ])("ends work of %d hours on %s", (after, moment) => {
    expect(momentText(calendar.workEnds(hours(after)))).toBe(moment);
  });

  test.each([
    ["2026-05-02", 0],
    ["2026-05-03", 6],
    ["2026-05-04", 10],
    ["2026-05-09", 10],
    ["2026-04-26", -4],
    ["2026-04-25", -10],
  ])("has before %s so many hours of work: %d", (day, expected) => {
    expect(numberOf(calendar.hoursUntil(dawn(date(day))))).toBe(expected);
  });

  test("finds days before today for work that should have begun", () => {
    expect(momentText(calendar.workBegins(hours(-3)))).toBe("2026-04-26 1");
  });

  test("has ten hours in seven calendar days, and as many in proportion", () => {
    expect(numberOf(calendar.hoursInDays(hours(7)))).toBe(10);
    expect(calendar.hoursInDays(hours(5))).toEqual({ numerator: 50n, denominator: 7n });
  });
});

describe("a closed range", () => {
  test("has no hours, its first and last day included", () => {
    const calendar = calendarOf({
      closed: [
        { from: date("2026-05-08"), to: date("2026-05-09") },
        { from: date("2026-05-03"), to: date("2026-05-08") },
      ],
    });
    // 6 h on Saturday the 2nd, then nothing up to Sunday the 10th.
    expect(momentText(calendar.workBegins(hours(6)))).toBe("2026-05-10 0");
    expect(numberOf(calendar.hoursOn(date("2026-05-09")))).toBe(0);
    expect(numberOf(calendar.hoursUntil(dawn(date("2026-05-11"))))).toBe(10);
  });

  test("that ends before it begins closes nothing", () => {
    const calendar = calendarOf({ closed: [{ from: date("2026-05-09"), to: date("2026-05-03") }] });
    expect(momentText(calendar.workBegins(hours(6)))).toBe("2026-05-03 0");
  });

  test("for ever leaves no hour to begin", () => {
    const calendar = calendarOf({ closed: [{ from: date("2026-05-03"), to: date("9999-12-31") }] });
    expect(momentText(calendar.workEnds(hours(6)))).toBe("2026-05-02 6");
    expect(momentText(calendar.workEnds(hours("6.01")))).toBe("never");
    expect(momentText(calendar.workBegins(hours(6)))).toBe("never");
  });
});

describe("hours that today already has behind it", () => {
  test("are not there to be planned", () => {
    const calendar = calendarOf({ bookedToday: decimal("2.5") });
    expect(momentText(calendar.start)).toBe("2026-05-02 2.5");
    expect(momentText(calendar.workEnds(hours("3.5")))).toBe("2026-05-02 6");
    expect(momentText(calendar.workBegins(hours("3.5")))).toBe("2026-05-03 0");
  });

  test("beyond what the day has take nothing from the next", () => {
    const calendar = calendarOf({ bookedToday: decimal(9) });
    expect(momentText(calendar.start)).toBe("2026-05-02 9");
    expect(momentText(calendar.workBegins(NO_HOURS))).toBe("2026-05-03 0");
  });

  test("on a day that the week does not have take nothing either", () => {
    const calendar = calendarOf({ today: date("2026-05-05"), bookedToday: decimal(3) });
    expect(momentText(calendar.workBegins(NO_HOURS))).toBe("2026-05-09 0");
  });
});

test("a week without hours has no work in it", () => {
  const calendar = calendarOf({ week: { tue: decimal(0) } });
  expect(momentText(calendar.workBegins(NO_HOURS))).toBe("never");
  expect(momentText(calendar.workEnds(hours(1)))).toBe("never");
});

describe("any calendar", () => {
  const dayHours = fc.integer({ min: 0, max: 96 }).map((quarters) => decimal(quarters).div(4));
  const names: readonly Weekday[] = ["sun", "mon", "tue", "wed", "thu", "fri", "sat"];
  const week = fc.array(dayHours, { minLength: 7, maxLength: 7 }).map((all) => {
    return Object.fromEntries(names.map((name, place) => [name, all[place]])) as Week;
  });
  const day = fc.integer({ min: 0, max: 800 }).map((days) => dayAfter("2025-12-29", days));
  const closed = fc.array(
    fc.tuple(day, day).map(([from, to]) => ({ from, to })),
    { maxLength: 4 },
  );
  const bookedToday = fc.integer({ min: 0, max: 12 }).map((half) => decimal(half).div(2));
  const time = fc.record({ week, closed, today: day, bookedToday });

  /** By the dates of the JavaScript language. */
  function dayAfter(first: string, days: number) {
    return date(new Date(Date.parse(first) + days * 86_400_000).toISOString().slice(0, 10));
  }

  test("counts as one does day by day", () => {
    fc.assert(
      fc.property(time, fc.integer({ min: 0, max: 400 }), (given, span) => {
        const calendar = calendarOf(given);
        let sum = NO_HOURS;
        for (let passed = 0; passed < span; passed += 1) {
          const one = dayAfter(given.today, passed);
          const name = names[new Date(one).getUTCDay()] ?? "sun";
          const isClosed = given.closed.some(({ from, to }) => from <= one && one <= to);
          const whole = isClosed ? decimal(0) : (given.week[name] ?? decimal(0));
          const left = passed === 0 ? whole.minus(given.bookedToday) : whole;
          if (left.greaterThan(0)) sum = addHours(sum, hours(left));
        }
        expect(calendar.hoursUntil(dawn(dayAfter(given.today, span)))).toEqual(sum);
      }),
    );
  });

  test("turns hours into dates and back", () => {
    const anyHours = fc.tuple(fc.integer({ min: 0, max: 9000 }), fc.integer({ min: 1, max: 42 }));
    fc.assert(
      fc.property(time, anyHours, (given, [numerator, divisor]) => {
        const after = addHours({ numerator: BigInt(numerator), denominator: BigInt(divisor) }, NO_HOURS);
        const calendar = calendarOf(given);
        const [begins, ends] = [calendar.workBegins(after), calendar.workEnds(after)];
        fc.pre(begins !== undefined && ends !== undefined);
        expect(calendar.hoursUntil(begins)).toEqual(after);
        expect(calendar.hoursUntil(ends)).toEqual(after);
        expect(compareMoments(ends, begins)).toBeLessThanOrEqual(0);
        expect(compareHours(begins.hour, calendar.hoursOn(begins.date))).toBe(-1);
      }),
    );
  });
});
