import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { addDays, compareDates } from "../../server/quantities/dates.ts";
import type { TimeScale } from "../../server/reports/time-scale.ts";
import { dayBegins, dayEnds, ticks } from "../../server/reports/time-scale.ts";

function scale(from: string, to: string): TimeScale {
  return { from: from as IsoDate, to: to as IsoDate, left: 100, right: 600 };
}

const may = scale("2026-05-01", "2026-05-10");

describe("a day", () => {
  test.each([
    ["2026-05-01", 100, 150],
    ["2026-05-02", 150, 200],
    ["2026-05-10", 550, 600],
  ])("%s of ten begins at %d and ends at %d of 100 to 600", (date, begins, ends) => {
    expect([dayBegins(may, date as IsoDate), dayEnds(may, date as IsoDate)]).toEqual([begins, ends]);
  });

  test("outside the scale lies at its end", () => {
    expect([dayBegins(may, "2026-04-01" as IsoDate), dayEnds(may, "2026-04-01" as IsoDate)]).toEqual([
      100, 100,
    ]);
    expect([dayBegins(may, "2027-04-01" as IsoDate), dayEnds(may, "9999-12-31" as IsoDate)]).toEqual([
      600, 600,
    ]);
  });
});

describe("named days", () => {
  const labels = (from: string, to: string) => ticks(scale(from, to), 70).map(({ label }) => label);

  test("of a week are all its days, as far as their names have room", () => {
    expect(labels("2026-05-01", "2026-05-07")).toEqual([
      "2026-05-01",
      "2026-05-02",
      "2026-05-03",
      "2026-05-04",
      "2026-05-05",
      "2026-05-06",
      "2026-05-07",
    ]);
    expect(labels("2026-05-01", "2026-05-10")).toEqual([
      "2026-05-01",
      "2026-05-03",
      "2026-05-05",
      "2026-05-07",
      "2026-05-09",
    ]);
  });

  test("of some weeks are Mondays", () => {
    expect(labels("2026-05-01", "2026-06-10")).toEqual([
      "2026-05-04",
      "2026-05-11",
      "2026-05-18",
      "2026-05-25",
      "2026-06-01",
      "",
    ]);
  });

  test("of a year are months, every third where they would be too close", () => {
    expect(labels("2026-02-10", "2026-07-20")).toEqual(["2026-03", "2026-04", "2026-05", "2026-06", ""]);
    expect(labels("2026-02-10", "2027-03-10")).toEqual(["2026-04", "2026-07", "2026-10", "2027-01"]);
  });

  test("end with the calendar", () => {
    expect(labels("9999-12-29", "9999-12-31")).toEqual(["9999-12-29", "9999-12-30", "9999-12-31"]);
    expect(labels("9999-12-10", "9999-12-31")).toEqual(["9999-12-13", "9999-12-20", "9999-12-27"]);
    expect(labels("9999-11-02", "9999-12-31")).not.toContain("9999-11");
    expect(labels("0001-01-01", "9999-12-31")).toHaveLength(10);
  });

  test("are in order, within the scale and never too close, however long it is", () => {
    const day = fc.integer({ min: 0, max: 400_000 }).map((days) => addDays("1900-01-01" as IsoDate, days));
    const length = fc.oneof(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 2_000_000 }));
    fc.assert(
      fc.property(day, length, (from, days) => {
        const long = scale(from, addDays(from, days));
        const found = ticks(long, 70);
        expect(found.every(({ date }) => date >= long.from && date <= long.to)).toBe(true);
        const apart = found.slice(1).map(({ date }, place) => {
          const before = found[place]?.date ?? date;
          expect(compareDates(before, date)).toBe(-1);
          return dayBegins(long, date) - dayBegins(long, before);
        });
        expect(apart.every((width) => width >= 69.9)).toBe(true);
      }),
    );
  });
});
