import { describe, expect, it } from "vitest";
import type { Build } from "../../server/build/build.ts";
import { lineOf, textAt } from "../../server/build/source.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { buildOf, expectFindings, findingOf, findingsOf, partAt } from "./marked-build.ts";

const DAYS = ["day-order", "future-day", "hours-over-day", "bad-date"] as const;

/** The facts that count, in the order in which they are read, with their files. */
function told({ facts }: Build): string[] {
  return facts.map(({ place }) => `${place.site.file.path} ${lineOf(place)}: ${textAt(place)}`);
}

describe("facts", () => {
  it("are read in the order of their dates; within a date by file name and then by line", () => {
    const build = buildOf({
      "b.cotter":
        'part hub "Hub"\nday 2026-05-02\n  removed: hub\n  cleaned: hub\nday 2026-05-01\n  inspected: hub\n',
      "a.cotter": "day 2026-05-02\n  found: hub dirty\n",
      "B.cotter": 'day 2026-05-02\n  tagged: hub "L"\n',
    });
    expect(told(build)).toEqual([
      "b.cotter 6: inspected: hub",
      'B.cotter 2: tagged: hub "L"',
      "a.cotter 2: found: hub dirty",
      "b.cotter 3: removed: hub",
      "b.cotter 4: cleaned: hub",
    ]);
  });

  it("of several blocks of one date in one file follow one another by line", () => {
    const build = buildOf(`
      part hub "Hub"
      day 2026-05-02
        removed: hub
      day 2026-05-02
        fitted: hub
    `);
    expect(partAt(build, "hub").place).toBe("on");
  });

  it("of days after today are read but do not count, and are said so", () => {
    const build = expectFindings(
      DAYS,
      `
      part hub "Hub"
      day 2026-05-02
        removed: hub
      day 2026-05-09
          ^^^^^^^^^^ future-day
        fitted: hub
      `,
      "2026-05-05" as IsoDate,
    );
    expect(findingOf(build, "future-day").data).toEqual({ date: "2026-05-09", today: "2026-05-05" });
    expect(partAt(build, "hub").place).toBe("off");
    expect(told(build)).toEqual(["log.cotter 3: removed: hub"]);
  });

  it("of today count", () => {
    const build = buildOf('part hub "Hub"\nday 2026-05-05\n  removed: hub\n', "2026-05-05" as IsoDate);
    expect(partAt(build, "hub").place).toBe("off");
  });

  it("of a day whose date cannot be read are kept, but count for nothing", () => {
    const build = expectFindings(
      [...DAYS, "unknown-reference"],
      `
      part hub "Hub"
      day 2026-02-30
          ^^^^^^^^^^ bad-date
        removed: hub
        removed: hbu
                 ^^^ unknown-reference
      `,
    );
    expect(partAt(build, "hub").place).toBe("on");
    expect(told(build)).toEqual([]);
    expect(build.standing.lost).toHaveLength(1);
  });
});

describe("today", () => {
  const LOG = 'vehicle "Plover"\n  today: 2026-05-05\npart hub "Hub"\nday 2026-05-09\n  removed: hub\n';

  it("is the vehicle's today: before the clock", () => {
    const build = buildOf(LOG, "2026-06-01" as IsoDate);
    expect(build.today).toBe("2026-05-05");
    expect(partAt(build, "hub").place).toBe("on");
  });

  it("is the clock's date without one", () => {
    expect(buildOf('part hub "Hub"\n', "2026-06-01" as IsoDate).today).toBe("2026-06-01");
  });
});

describe("days", () => {
  it("before the one above them in one file are said so, each once, with the day above", () => {
    const build = expectFindings(
      DAYS,
      `
      part hub "Hub"
      day 2026-05-02
      day 2026-05-05
      day 2026-05-03
          ^^^^^^^^^^ day-order
      day 2026-05-04
      day 2026-05-04
      `,
    );
    expect(findingOf(build, "day-order").data).toEqual({ date: "2026-05-03", before: "2026-05-05" });
  });

  it("of different files follow one another as they like", () => {
    const build = buildOf({
      "a.cotter": 'part hub "Hub"\nday 2026-05-05\n',
      "b.cotter": "day 2026-05-02\n",
    });
    expect(findingsOf(build, ["day-order"])).toEqual([]);
  });

  it("are too short for the work that is booked, at the last of it", () => {
    const build = expectFindings(
      DAYS,
      `
      job strip "Strip"
      day 2026-05-02 6 h
        worked: 4 h on strip
        worked: 2 h 30 min on strip
        ^^^^^^^^^^^^^^^^^^^^^^^^^^^ hours-over-day
      day 2026-05-03 6 h
        worked: 4 h on strip
        worked: 2 h on strip
      day 2026-05-04
        worked: 9 h on strip
      `,
    );
    expect(findingOf(build, "hours-over-day").seeAlso.map(({ place }) => lineOf(place))).toEqual([2]);
  });

  it("have as many hours as there are pairs of hands", () => {
    expectFindings(
      DAYS,
      `
      vehicle "Plover"
        hands: 2
      job strip "Strip"
      day 2026-05-02 6 h
        worked: 12 h on strip
      day 2026-05-03 6 h
        worked: 12.5 h on strip
        ^^^^^^^^^^^^^^^^^^^^^^^ hours-over-day
      `,
    );
  });

  it("have 24 hours at most", () => {
    expectFindings(
      DAYS,
      `
      part hub "Hub"
      day 2026-05-02 24 h
      day 2026-05-03 25 h
          ^^^^^^^^^^ hours-over-day
      `,
    );
  });
});

describe("a complaint that only follows from a line that could not be read", () => {
  const PARTS = 'part hub "Hub"\npart disc "Disc"\n';

  /** The lines that a complaint says may be why. */
  function reasons(text: string, code: "fitted-twice" | "removed-twice"): string[] {
    return findingOf(buildOf(text), code)
      .seeAlso.filter(({ role }) => role === "this line could not be read, and may be why")
      .map(({ place }) => `${lineOf(place)}: ${textAt(place)}`);
  }

  it("says so: the misspelt line is named beside it", () => {
    const text = `${PARTS}day 2026-05-02\n  remvoed: hub\n  remvoed: disc\n  fitted: hub\n`;
    expect(reasons(text, "fitted-twice")).toEqual(["4: remvoed: hub"]);
  });

  it("says so of a day whose date could not be read", () => {
    const text = `${PARTS}day 2026-02-30\n  removed: hub\nday 2026-05-02\n  fitted: hub\n`;
    expect(reasons(text, "fitted-twice")).toEqual(["3: day"]);
  });

  it("does not where the lost line is about something else, or comes later", () => {
    const text = `${PARTS}day 2026-05-02\n  remvoed: disc\n  fitted: hub\n  remvoed: hub\n`;
    expect(reasons(text, "fitted-twice")).toEqual([]);
  });
});
