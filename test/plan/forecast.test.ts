/** Forecasts worked out by hand. The week has 6 h on Saturday and 4 h on Sunday, and today is Saturday 2 May 2026. */

import { describe, expect, test } from "vitest";
import { forecast, NINE_IN_TEN } from "../../server/plan/forecast.ts";
import { level } from "../../server/plan/levelling.ts";
import type { PlannedActivity } from "../../server/plan/planned-activity.ts";
import { calendarOf, date, hold, momentText, numberOf, outside, own, until } from "./planned.ts";

function forecastOf(activities: readonly PlannedActivity[], { calendar = calendarOf(), hands = 1 } = {}) {
  const found = forecast(level(activities, calendar, hands));
  if (found === undefined) return undefined;
  return {
    finish50: momentText(found.finish50),
    finish90: momentText({ ...found.finish90, hour: { numerator: 0n, denominator: 1n } }).slice(0, 10),
    reserve: found.reserve.toFixed(6),
    chain: found.chain.ids.join(" "),
    variance: Number(numberOf(found.chain.variance).toFixed(9)),
  };
}

describe("the forecast", () => {
  test("adds the reserve of the longest chain behind the plan", () => {
    const activities = [
      own("strip", [4, 8, 12]),
      own("frame", 6, { after: ["strip"] }),
      outside("machining", 14, { after: ["strip"] }),
      own("engine", [3, 5, 7], { after: ["machining"] }),
      own("loom", [1, 4, 7]),
    ];
    // Means 8, 6, 14 d, 5 and 4 h: the plan of levelling.test.ts, done at hour 31. The chain is strip, machining and
    // engine: ((12 - 4) / 6)² + 0 + ((7 - 3) / 6)² = 16/9 + 4/9 = 20/9, its root 1.490712, times 1.2816 = 1.910496.
    // Hour 32.91 is 2.91 h into Saturday 23 May, which begins with hour 30.
    expect(forecastOf(activities)).toEqual({
      finish50: "2026-05-23 1",
      finish90: "2026-05-23",
      reserve: "1.910496",
      chain: "strip machining engine",
      variance: 2.222222222,
    });
  });

  test("follows the hands from job to job", () => {
    const jobs = [own("left", [1, 3, 5]), own("right", [2, 3, 10])];
    // Means 3 and 4, variances (4/6)² = 4/9 and (8/6)² = 16/9. Late starts 4 - 3 = 1 and 0: right goes first.
    expect(forecastOf(jobs)).toMatchObject({ chain: "right left", variance: 2.222222222 });
    expect(forecastOf(jobs, { hands: 2 })).toMatchObject({ chain: "right", variance: 1.777777778 });
  });

  test("counts the spread of a supplier's days in hours of work", () => {
    // Mean 14 d, variance ((28 - 0) / 6)² = 196/9 d²; a day has 10/7 h on the average: 196/9 × 100/49 = 400/9 h².
    // Root 20/3, times 1.2816 = 8.544 h. Back on the 16th, which begins with hour 20; hour 28.544 is on Sunday the 17th.
    expect(forecastOf([outside("plating", [0, 14, 28])])).toEqual({
      finish50: "2026-05-16 0",
      finish90: "2026-05-17",
      reserve: "8.544000",
      chain: "plating",
      variance: 44.444444444,
    });
  });

  test("starts its chain anew where a day was waited for", () => {
    const jobs = [own("strip", [1, 4, 7]), own("brakes", [1, 2, 3], { waits: [until("2026-05-09")] })];
    expect(forecastOf(jobs)).toMatchObject({ chain: "brakes" });
  });

  test("goes on through a job that ends just when the day comes that was waited for", () => {
    // 10 h end on Sunday evening, and no hour of work lies between that and Saturday.
    const jobs = [own("strip", [4, 10, 16]), own("brakes", 2, { waits: [until("2026-05-09")] })];
    expect(forecastOf(jobs)).toMatchObject({ chain: "strip brakes" });
  });

  test("takes of equally long chains the one with the greater variance", () => {
    const jobs = [own("sure", 4), own("unsure", [1, 4, 7]), own("join", 1, { after: ["sure", "unsure"] })];
    expect(forecastOf(jobs, { hands: 2 })).toMatchObject({ chain: "unsure join", variance: 1 });
  });

  test("has both dates the same where nothing is uncertain", () => {
    expect(forecastOf([own("strip", 8), hold("ready", { after: ["strip"] })])).toEqual({
      finish50: "2026-05-03 2",
      finish90: "2026-05-03",
      reserve: "0.000000",
      chain: "strip",
      variance: 0,
    });
  });

  test("counts what is back last though no hour of work lies behind it", () => {
    // Sunday evening and Wednesday are the same hour of work; the later day is the finish.
    expect(forecastOf([own("strip", 10), outside("plating", 4)])).toMatchObject({ finish50: "2026-05-06 0" });
  });

  test("is none where nothing is planned, or something never comes to its turn", () => {
    const calendar = calendarOf({ closed: [{ from: date("2026-05-03"), to: date("9999-12-31") }] });
    expect(forecastOf([])).toBeUndefined();
    expect(forecastOf([own("strip", 7), own("trim", 2)], { calendar })).toBeUndefined();
  });
});

describe("the deviations of nine in ten", () => {
  /** The share of a normal distribution that lies below, by the integral of its density (midpoint rule). */
  function below(deviations: number): number {
    const steps = 10_000;
    const width = deviations / steps;
    let area = 0;
    for (let step = 0; step < steps; step += 1) area += Math.exp(-0.5 * ((step + 0.5) * width) ** 2) * width;
    return 0.5 + area / Math.sqrt(2 * Math.PI);
  }

  test("are right to their last decimal", () => {
    const half = 0.00005;
    expect(below(NINE_IN_TEN.toNumber() - half)).toBeLessThan(0.9);
    expect(below(NINE_IN_TEN.toNumber() + half)).toBeGreaterThan(0.9);
  });
});
