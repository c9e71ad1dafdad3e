/** Plans worked out by hand. The week has 6 h on Saturday and 4 h on Sunday, and today is Saturday 2 May 2026. */

import { describe, expect, test } from "vitest";
import { level } from "../../server/plan/levelling.ts";
import type { PlannedActivity } from "../../server/plan/planned-activity.ts";
import { decimal } from "../../server/quantities/decimal.ts";
import { calendarOf, date, hold, numberOf, outside, own, schedule, until } from "./planned.ts";

/**
 * A week of work has 10 h, so 14 days away count as 20 h in the network:
 *
 *             hours   early      late
 *   strip       8      0..8      0..8     critical
 *   frame       6      8..14    27..33
 *   machining  20      8..28     8..28    critical
 *   engine      5     28..33    28..33    critical
 *   loom        4      0..4     29..33
 */
const rebuild: readonly PlannedActivity[] = [
  own("strip", 8),
  own("frame", 6, { after: ["strip"] }),
  outside("machining", 14, { after: ["strip"] }),
  own("engine", 5, { after: ["machining"] }),
  own("loom", 4),
];

describe("a plan for one pair of hands", () => {
  test("does what has the least late start first, and lets what is away take its days", () => {
    const { network } = level(rebuild, calendarOf(), 1);
    expect([...network.figures.values()].map(({ latestStart }) => numberOf(latestStart))).toEqual([
      0, 27, 8, 28, 29,
    ]);
    expect(schedule(rebuild)).toEqual({
      // Of strip (late start 0) and loom (29): strip, 8 h: 6 on Saturday and 2 on Sunday.
      strip: "2026-05-02 0 to 2026-05-03 2",
      // Away on that Sunday for 14 days: back on the 17th.
      machining: "2026-05-03 2 to 2026-05-17 0",
      // Of frame (27) and loom (29): frame, 6 h: 2 on Sunday and 4 on Saturday the 9th; then loom: 2 and 2.
      frame: "2026-05-03 2 to 2026-05-09 4",
      loom: "2026-05-09 4 to 2026-05-10 2",
      // 4 h on Sunday the 17th and 1 h on the Saturday after it.
      engine: "2026-05-17 0 to 2026-05-23 1",
    });
  });

  test("says what each of them was bound by", () => {
    const { levelled } = level(rebuild, calendarOf(), 1);
    expect(Object.fromEntries([...levelled].map(([id, { bounds }]) => [id, bounds]))).toEqual({
      strip: [],
      machining: [{ kind: "after", id: "strip" }],
      frame: [
        { kind: "after", id: "strip" },
        { kind: "hands", id: "strip" },
      ],
      loom: [{ kind: "hands", id: "frame" }],
      engine: [{ kind: "after", id: "machining" }],
    });
  });

  test("takes equal late starts in order of definition", () => {
    expect(schedule([own("left", 3), own("right", 3)])).toEqual({
      left: "2026-05-02 0 to 2026-05-02 3",
      right: "2026-05-02 3 to 2026-05-02 6",
    });
    expect(Object.keys(schedule([own("right", 3), own("left", 3)]))).toEqual(["right", "left"]);
  });
});

describe("a plan for two pairs of hands", () => {
  test("gives each its own job, and no third", () => {
    const jobs = [
      own("strip", 4),
      own("frame", 6, { after: ["strip"] }),
      own("loom", 4),
      own("seat", 3),
      own("tank", 2),
    ];
    // Late starts 0, 4, 6, 7, 8. Hands 0: strip 0..4, frame 4..10. Hands 1: loom 0..4, seat 4..7, tank 7..9.
    const { levelled } = level(jobs, calendarOf(), 2);
    expect(
      [...levelled.values()].map(
        ({ activity, hands, startHours, finishHours }) =>
          `${hands} ${activity.id} ${numberOf(startHours)}..${numberOf(finishHours)}`,
      ),
    ).toEqual(["0 strip 0..4", "1 loom 0..4", "0 frame 4..10", "1 seat 4..7", "1 tank 7..9"]);
  });

  test("needs no hands for what is away", () => {
    expect(schedule([own("strip", 4), outside("plating", 3), outside("machining", 2)])).toEqual({
      plating: "2026-05-02 0 to 2026-05-05 0",
      machining: "2026-05-02 0 to 2026-05-04 0",
      strip: "2026-05-02 0 to 2026-05-02 4",
    });
  });
});

describe("a job that waits", () => {
  test("for its parts starts on the day they come", () => {
    expect(schedule([own("brakes", 2, { waits: [until("2026-05-10")] })])).toEqual({
      brakes: "2026-05-10 0 to 2026-05-10 2",
    });
  });

  test("for several days waits for the last", () => {
    const waits = [until("2026-05-09"), until("2026-05-16", "start"), until("2026-05-10")];
    expect(schedule([own("brakes", 2, { waits })])).toEqual({ brakes: "2026-05-16 0 to 2026-05-16 2" });
  });

  test("for a day on which nobody works starts on the next day of work", () => {
    expect(schedule([own("brakes", 2, { waits: [until("2026-05-05")] })])).toEqual({
      brakes: "2026-05-09 0 to 2026-05-09 2",
    });
  });

  test("for a day that is past does not wait", () => {
    expect(schedule([own("brakes", 2, { waits: [until("2026-04-05")] })])).toEqual({
      brakes: "2026-05-02 0 to 2026-05-02 2",
    });
  });

  test("keeps no hands idle, and interrupts nothing that was begun meanwhile", () => {
    // Brakes have the less float, but their parts come when 6 h of the trim are done: it is finished first.
    const jobs = [
      own("brakes", 2, { waits: [until("2026-05-03")] }),
      own("test", 30, { after: ["brakes"] }),
      own("trim", 9),
    ];
    expect(schedule(jobs)).toMatchObject({
      trim: "2026-05-02 0 to 2026-05-03 3",
      brakes: "2026-05-03 3 to 2026-05-09 1",
    });
  });

  test("goes first on the morning on which it may start", () => {
    // The evening before belongs to the day before: on Sunday both may start, and brakes have the less float.
    const jobs = [
      own("strip", 6),
      own("trim", 2, { after: ["strip"] }),
      own("brakes", 2, { waits: [until("2026-05-03")] }),
      own("test", 30, { after: ["brakes"] }),
    ];
    expect(schedule(jobs)).toMatchObject({
      strip: "2026-05-02 0 to 2026-05-02 6",
      brakes: "2026-05-03 0 to 2026-05-03 2",
    });
  });
});

describe("a job that the log has started", () => {
  const long = [own("paint", 5), own("dry", 40, { after: ["paint"] })];

  test("goes on before anything new is begun", () => {
    expect(schedule([...long, own("trim", 1, { started: true })])).toMatchObject({
      trim: "2026-05-02 0 to 2026-05-02 1",
      paint: "2026-05-02 1 to 2026-05-02 6",
    });
  });

  test("waits for its parts without holding hands, and goes on next when they have come", () => {
    const trim = own("trim", 1, { started: true, waits: [until("2026-05-03")] });
    expect(schedule([own("strip", 8), own("seat", 2), trim])).toEqual({
      strip: "2026-05-02 0 to 2026-05-03 2",
      trim: "2026-05-03 2 to 2026-05-03 3",
      seat: "2026-05-03 3 to 2026-05-09 1",
    });
  });

  test("still waits for what is before it", () => {
    const trim = own("trim", 1, { started: true, after: ["strip"] });
    expect(schedule([trim, own("strip", 3)])).toEqual({
      strip: "2026-05-02 0 to 2026-05-02 3",
      trim: "2026-05-02 3 to 2026-05-02 4",
    });
  });

  test("with nothing left of its estimate takes no time and no hands", () => {
    expect(schedule([own("trim", 0, { started: true }), own("strip", 3)])).toEqual({
      trim: "2026-05-02 0 to 2026-05-02 0",
      strip: "2026-05-02 0 to 2026-05-02 3",
    });
  });
});

describe("outside work", () => {
  test("that is away already is back on the day it was promised", () => {
    const away = outside("plating", 30, { started: true, back: date("2026-05-08") });
    expect(schedule([away, own("fit", 2, { after: ["plating"] })])).toEqual({
      plating: "2026-05-02 0 to 2026-05-08 0",
      fit: "2026-05-09 0 to 2026-05-09 2",
    });
  });

  test("that is overdue is expected today", () => {
    const away = outside("plating", 30, { started: true, back: date("2026-04-08") });
    expect(schedule([away])).toEqual({ plating: "2026-05-02 0 to 2026-05-02 0" });
  });

  test("of part of a day takes the day", () => {
    // (1 + 4 × 2 + 4) / 6 is 2 1/6 days.
    expect(schedule([outside("plating", [1, 2, 4])])).toEqual({ plating: "2026-05-02 0 to 2026-05-05 0" });
  });

  test("follows outside work on the day, closed or not", () => {
    const calendar = calendarOf({ closed: [{ from: date("2026-05-03"), to: date("2026-05-20") }] });
    expect(schedule([outside("strip", 2), outside("plate", 3, { after: ["strip"] })], { calendar })).toEqual({
      strip: "2026-05-02 0 to 2026-05-04 0",
      plate: "2026-05-04 0 to 2026-05-07 0",
    });
  });
});

describe("a hold point", () => {
  test("is passed when all before it is done, at the end of that day's work", () => {
    const activities = [
      own("build", 6),
      own("loom", 4),
      hold("fire_up", { after: ["build"] }),
      own("run", 1, { after: ["fire_up"] }),
    ];
    // Late starts: run 9, build 3, loom 6.
    expect(schedule(activities)).toEqual({
      build: "2026-05-02 0 to 2026-05-02 6",
      fire_up: "2026-05-02 6 to 2026-05-02 6",
      loom: "2026-05-03 0 to 2026-05-03 4",
      run: "2026-05-09 0 to 2026-05-09 1",
    });
  });

  test("with nothing before it is passed today", () => {
    const calendar = calendarOf({ bookedToday: decimal(2) });
    expect(schedule([hold("fire_up")], { calendar })).toEqual({ fire_up: "2026-05-02 2 to 2026-05-02 2" });
  });

  test("behind outside work is passed on the day it is back", () => {
    expect(schedule([outside("plating", 3), hold("fit", { after: ["plating"] })])).toMatchObject({
      fit: "2026-05-05 0 to 2026-05-05 0",
    });
  });
});

describe("the hours there are", () => {
  test("start with what is left of today", () => {
    const calendar = calendarOf({ bookedToday: decimal("4.5") });
    expect(schedule([own("strip", 3)], { calendar })).toEqual({ strip: "2026-05-02 4.5 to 2026-05-03 1.5" });
  });

  test("leave out what is closed", () => {
    const calendar = calendarOf({ closed: [{ from: date("2026-05-03"), to: date("2026-05-09") }] });
    expect(schedule([own("strip", 8)], { calendar })).toEqual({ strip: "2026-05-02 0 to 2026-05-10 2" });
  });

  test("may not be enough: what has no place is named, with all behind it, and the rest is planned", () => {
    const calendar = calendarOf({ closed: [{ from: date("2026-05-03"), to: date("9999-12-31") }] });
    const activities = [
      own("strip", 7),
      own("paint", 1, { after: ["strip"] }),
      hold("ready", { after: ["paint"] }),
      own("trim", 6),
    ];
    const { levelled, unplanned } = level(activities, calendar, 1);
    expect([[...levelled.keys()], unplanned]).toEqual([["trim"], ["strip", "paint", "ready"]]);
  });

  test("are none where there are no hands", () => {
    const { levelled, unplanned } = level([own("strip", 7), outside("plating", 3)], calendarOf(), 0);
    expect([[...levelled.keys()], unplanned]).toEqual([["plating"], ["strip"]]);
  });
});

test("a circle loses the same link as in the network", () => {
  expect(schedule([own("a", 2, { after: ["b"] }), own("b", 3, { after: ["a"] })])).toEqual({
    a: "2026-05-02 0 to 2026-05-02 2",
    b: "2026-05-02 2 to 2026-05-02 5",
  });
});

test("nothing to do is planned at once", () => {
  expect(schedule([])).toEqual({});
});
