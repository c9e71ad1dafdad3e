/** Worked out by hand. The week has 6 h on Saturday and 4 h on Sunday, and today is Saturday 2 May 2026. */

import { describe, expect, test } from "vitest";
import { latestBeginnings, orderBy } from "../../server/plan/needed-by.ts";
import type { PlannedActivity } from "../../server/plan/planned-activity.ts";
import { calendarOf, date, hold, outside, own } from "./planned.ts";

function beginnings(activities: readonly PlannedActivity[], planned: Readonly<Record<string, string>>) {
  const holds = Object.entries(planned).map(([id, day]) => ({ id, planned: date(day) }));
  const found = latestBeginnings(activities, holds, calendarOf());
  return Object.fromEntries([...found].map(([id, one]) => [id, `${one.date} for ${one.hold}`]));
}

describe("the latest beginning", () => {
  test("leaves what is behind it time before the day of the hold point begins", () => {
    const activities = [
      own("strip", 3),
      own("brakes", 5, { after: ["strip"] }),
      hold("first_run", { after: ["brakes"] }),
    ];
    // Saturday the 16th begins with hour 20: brakes by hour 15, on Saturday the 9th (10..16); strip by hour 12, too.
    expect(beginnings(activities, { first_run: "2026-05-16" })).toEqual({
      strip: "2026-05-09 for first_run",
      brakes: "2026-05-09 for first_run",
    });
  });

  test("is asked for by the next hold point that the job leads to", () => {
    const activities = [
      own("engine", 2),
      own("body", 2),
      hold("fire_up", { after: ["engine"] }),
      hold("climb", { after: ["fire_up", "body"] }),
    ];
    expect(beginnings(activities, { climb: "2026-05-30", fire_up: "2026-05-10" })).toEqual({
      engine: "2026-05-09 for fire_up",
      body: "2026-05-24 for climb",
      fire_up: "2026-05-30 for climb",
    });
  });

  test("may have gone by", () => {
    const activities = [own("strip", 9), hold("ready", { after: ["strip"] })];
    // Sunday the 3rd begins with hour 6, and 9 h before that is hour -3: on Sunday 26 April (-4..0).
    expect(beginnings(activities, { ready: "2026-05-03" })).toEqual({ strip: "2026-04-26 for ready" });
  });

  test("counts a supplier's days as the hours that the week has in as many", () => {
    // 7 days count as 10 h: hour 20 less 10 is hour 10, Saturday the 9th.
    const activities = [outside("plating", 7), hold("ready", { after: ["plating"] })];
    expect(beginnings(activities, { ready: "2026-05-16" })).toEqual({ plating: "2026-05-09 for ready" });
  });

  test("is not asked for by a hold point whose day has gone by, nor without one", () => {
    const activities = [own("strip", 2), hold("ready", { after: ["strip"] }), own("loom", 2)];
    expect(beginnings(activities, { ready: "2026-05-01" })).toEqual({});
    expect(beginnings(activities, {})).toEqual({});
  });
});

test("an order goes out its lead time, in whole days, before the part is needed", () => {
  expect(orderBy(date("2026-05-09"), 7)).toBe("2026-05-02");
  expect(orderBy(date("2026-05-09"), 7.5)).toBe("2026-05-01");
});
