import { describe, expect, test } from "vitest";
import { threePointEstimate } from "../../server/plan/estimate.ts";
import { hours } from "../../server/plan/hours.ts";
import type { NetworkActivity } from "../../server/plan/network.ts";
import { network } from "../../server/plan/network.ts";
import { numberOf } from "./planned.ts";

function activity(id: string, time: number, ...after: readonly string[]): NetworkActivity {
  return { id, hours: hours(time), after };
}

function figuresOf(activities: readonly NetworkActivity[]) {
  return Object.fromEntries(
    [...network(activities).figures].map(([id, one]) => [
      id,
      [one.earliestStart, one.earliestFinish, one.latestStart, one.latestFinish, one.totalFloat]
        .map(numberOf)
        .join(" "),
    ]),
  );
}

describe("the network", () => {
  test("counts late dates from its own finish", () => {
    expect(figuresOf([activity("strip", 8), activity("paint", 6, "strip"), activity("loom", 4)])).toEqual({
      strip: "0 8 0 8 0",
      paint: "8 14 8 14 0",
      loom: "0 4 10 14 10",
    });
  });

  test("of nothing is finished at once", () => {
    const { figures, finish, criticalPath } = network([]);
    expect([figures.size, numberOf(finish), criticalPath]).toEqual([0, 0, []]);
  });

  test("waits for the hour before which an activity cannot begin, and makes that critical", () => {
    const late = { ...activity("machining", 5, "strip"), notBefore: hours(20) };
    const activities = [activity("strip", 8), late, activity("build", 2, "machining")];
    // 20 + 5 + 2 = 27; stripping may take until hour 20.
    expect(figuresOf(activities)).toEqual({
      strip: "0 8 12 20 12",
      machining: "20 25 20 25 0",
      build: "25 27 25 27 0",
    });
    expect(network(activities).criticalPath).toEqual(["machining", "build"]);
  });

  test("takes hold points as activities without duration", () => {
    const activities = [activity("build", 3), activity("fire_up", 0, "build"), activity("run", 1, "fire_up")];
    expect(figuresOf(activities)).toEqual({ build: "0 3 0 3 0", fire_up: "3 3 3 3 0", run: "3 4 3 4 0" });
    expect(network(activities).criticalPath).toEqual(["build", "fire_up", "run"]);
  });

  test("names every critical path in order of work", () => {
    const activities = [activity("join", 1, "left", "right"), activity("left", 4), activity("right", 4)];
    expect(network(activities).criticalPath).toEqual(["left", "right", "join"]);
  });

  test("loses no critical path to rounding", () => {
    // Means of 11/6, 11/6 and 11/3 hours: 11/6 + 11/6 is 11/3, which neither binary nor decimal fractions can tell.
    const sixths = threePointEstimate(1, 2, 2).mean;
    const thirds = threePointEstimate(2, 4, 4).mean;
    const { figures } = network([
      { id: "a", hours: sixths, after: [] },
      { id: "b", hours: sixths, after: ["a"] },
      { id: "c", hours: thirds, after: [] },
    ]);
    expect([...figures.values()].map(({ critical }) => critical)).toEqual([true, true, true]);
  });

  test("has an answer for a circle, and says which link it did without", () => {
    const { circles, finish } = network([
      activity("a", 2, "b"),
      activity("b", 3, "a"),
      activity("c", 1, "b"),
    ]);
    expect(circles).toEqual([{ ids: ["a", "b"], leftOut: { id: "a", after: "b" } }]);
    expect(numberOf(finish)).toBe(6);
  });
});
