/** What holds for any plan: networks and levelled plans drawn at random. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { forecast } from "../../server/plan/forecast.ts";
import type { Hours } from "../../server/plan/hours.ts";
import {
  addHours,
  compareHours,
  greaterHours,
  hours,
  NO_HOURS,
  subtractHours,
} from "../../server/plan/hours.ts";
import type { LevelledActivity } from "../../server/plan/levelling.ts";
import { level } from "../../server/plan/levelling.ts";
import type { NetworkActivity } from "../../server/plan/network.ts";
import { network } from "../../server/plan/network.ts";
import type { PlannedActivity } from "../../server/plan/planned-activity.ts";
import { compareMoments, dawn } from "../../server/plan/working-calendar.ts";
import { addDays } from "../../server/quantities/dates.ts";
import { decimal } from "../../server/quantities/decimal.ts";
import { calendarOf, date, hold, outside, own } from "./planned.ts";

/** Sixths, as a mean of three estimates has them. */
const someHours = fc.integer({ min: 0, max: 200 }).map((sixths) => {
  return addHours({ numerator: BigInt(sixths), denominator: 6n }, NO_HOURS);
});

/** Each waits for some of those before it, so there is no circle. */
function predecessors(place: number) {
  return fc.subarray(
    Array.from({ length: place }, (_, earlier) => `a${earlier}`),
    { maxLength: Math.min(3, place) },
  );
}

const networkActivities: fc.Arbitrary<readonly NetworkActivity[]> = fc
  .integer({ min: 1, max: 12 })
  .chain((count) =>
    fc.tuple(
      ...Array.from({ length: count }, (_, place) =>
        fc.record({
          id: fc.constant(`a${place}`),
          hours: someHours,
          after: predecessors(place),
          notBefore: fc.option(someHours, { nil: undefined }),
        }),
      ),
    ),
  );

const points = fc
  .tuple(fc.nat(8), fc.nat(8), fc.nat(8))
  .map(([least, more, most]) => [least, least + more, least + more + most] as const);
const day = fc.integer({ min: -5, max: 40 }).map((days) => addDays(date("2026-05-02"), days));
const waits = fc.array(
  day.map((until) => ({ until, why: "parts" })),
  { maxLength: 2 },
);

function plannedActivities(kinds: readonly ("own" | "outside" | "hold")[]) {
  return fc.integer({ min: 1, max: 12 }).chain((count) =>
    fc.tuple(
      ...Array.from({ length: count }, (_, place) =>
        fc
          .record({
            kind: fc.constantFrom(...kinds),
            time: points,
            after: predecessors(place),
            waits,
            started: fc.boolean(),
          })
          .map(({ kind, time, ...more }): PlannedActivity => {
            if (kind === "hold") return hold(`a${place}`, more);
            return kind === "own" ? own(`a${place}`, time, more) : outside(`a${place}`, time, more);
          }),
      ),
    ),
  );
}

const anyKind = plannedActivities(["own", "outside", "hold"]);
const hands = fc.integer({ min: 1, max: 3 });
const calendar = fc
  .record({
    closed: fc.array(
      fc.tuple(day, day).map(([from, to]) => ({ from, to })),
      { maxLength: 2 },
    ),
    bookedToday: fc.integer({ min: 0, max: 7 }).map((whole) => decimal(whole)),
    today: fc.integer({ min: 0, max: 6 }).map((days) => addDays(date("2026-05-02"), days)),
  })
  .map(calendarOf);

function atMost(a: Hours, b: Hours): boolean {
  return compareHours(a, b) <= 0;
}

/** Whether hands are at it in the hour that begins then. */
function isWorkedOn({ startHours, finishHours }: LevelledActivity, hour: Hours): boolean {
  return atMost(startHours, hour) && compareHours(hour, finishHours) < 0;
}

describe("any network", () => {
  test("has floats that are not negative, and a critical activity that ends it", () => {
    fc.assert(
      fc.property(networkActivities, (activities) => {
        const { figures, finish } = network(activities);
        const all = [...figures.values()];
        expect(
          all.every(
            ({ totalFloat, freeFloat }) => atMost(NO_HOURS, freeFloat) && atMost(freeFloat, totalFloat),
          ),
        ).toBe(true);
        expect(all.some((one) => one.critical && compareHours(one.earliestFinish, finish) === 0)).toBe(true);
      }),
    );
  });

  test("is not finished earlier for one precedence more", () => {
    fc.assert(
      fc.property(networkActivities, fc.nat(), fc.nat(), (activities, some, other) => {
        fc.pre(activities.length > 1);
        const later = 1 + (some % (activities.length - 1));
        const bound = activities.map((one, place) =>
          place === later ? { ...one, after: [...one.after, `a${other % later}`] } : one,
        );
        expect(atMost(network(activities).finish, network(bound).finish)).toBe(true);
      }),
    );
  });

  test("is exact: the critical path is as long as the whole, to the last digit", () => {
    fc.assert(
      fc.property(networkActivities, (activities) => {
        const unbound = activities.map((one) => ({ ...one, notBefore: undefined }));
        const { figures, finish } = network(unbound);
        // Back from the end along what is critical and ends where the next begins.
        let start = finish;
        const critical = unbound.filter(({ id }) => figures.get(id)?.critical).toReversed();
        for (const { id, hours } of critical) {
          if (compareHours(figures.get(id)?.earliestFinish ?? NO_HOURS, start) === 0)
            start = subtractHours(start, hours);
        }
        expect(start).toEqual(NO_HOURS);
      }),
    );
  });

  test("with any links at all, circles too, has an answer", () => {
    const tangle = fc
      .array(fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 4 }), { minLength: 10, maxLength: 10 })
      .map((all) =>
        all.map((after, place) => ({
          id: `a${place}`,
          hours: NO_HOURS,
          after: after.map((one) => `a${one}`),
        })),
      );
    fc.assert(
      fc.property(tangle, (activities) => {
        const { figures, circles } = network(activities);
        expect(figures.size).toBe(10);
        // Without the links that were left out there is no circle.
        const straight = activities.map((one) => ({
          ...one,
          after: one.after.filter(
            (id) => !circles.some(({ leftOut }) => leftOut.id === one.id && leftOut.after === id),
          ),
        }));
        expect(network(straight).circles).toEqual([]);
        // Each circle is one of the links that are there.
        const waitsFor = (id: string | undefined, other: string | undefined) =>
          activities.some((one) => one.id === id && one.after.includes(other ?? ""));
        expect(circles.every(({ ids }) => ids.every((id, place) => waitsFor(id, ids.at(place - 1))))).toBe(
          true,
        );
      }),
    );
  });
});

describe("any levelled plan", () => {
  test("has a place for everything, after all that is before it and all it waits for", () => {
    fc.assert(
      fc.property(anyKind, hands, calendar, (activities, pairs, time) => {
        const { levelled, unplanned } = level(activities, time, pairs);
        expect(unplanned).toEqual([]);
        const early = activities.filter(({ id, after, waits: days }) => {
          const one = levelled.get(id);
          if (one === undefined) return true;
          const before = after.map((other) => levelled.get(other)?.finish ?? dawn(date("9999-12-31")));
          return [...before, ...days.map(({ until }) => dawn(until)), time.start].some(
            (moment) => compareMoments(one.start, moment) < 0,
          );
        });
        expect(early).toEqual([]);
      }),
    );
  });

  test("starts nothing before its early start in the network, where all work is own work", () => {
    fc.assert(
      fc.property(plannedActivities(["own", "hold"]), hands, calendar, (activities, pairs, time) => {
        const { levelled, network: figures } = level(activities, time, pairs);
        const tooEarly = activities.filter(({ id }) => {
          const [start, earliest] = [levelled.get(id)?.startHours, figures.figures.get(id)?.earliestStart];
          return start === undefined || earliest === undefined || !atMost(earliest, start);
        });
        expect(tooEarly).toEqual([]);
      }),
    );
  });

  test("never has more own jobs at once than hands, nor two in the same hands", () => {
    fc.assert(
      fc.property(anyKind, hands, calendar, (activities, pairs, time) => {
        const inHands = [...level(activities, time, pairs).levelled.values()].filter(
          (one) => one.hands !== undefined,
        );
        for (const one of inHands) {
          const atOnce = inHands.filter((other) => isWorkedOn(other, one.startHours));
          expect(atOnce.length).toBeLessThanOrEqual(pairs);
          expect(new Set(atOnce.map((other) => other.hands)).size).toBe(atOnce.length);
        }
      }),
    );
  });

  test("lets no hands be idle while a job could be done", () => {
    fc.assert(
      fc.property(anyKind, hands, calendar, (activities, pairs, time) => {
        const { levelled } = level(activities, time, pairs);
        const inHands = [...levelled.values()].filter((one) => one.hands !== undefined);
        for (const { activity, startHours } of inHands) {
          const ready = [
            ...activity.after.map((id) => levelled.get(id)?.finishHours ?? NO_HOURS),
            ...activity.waits.map(({ until }) => time.hoursUntil(dawn(until))),
          ].reduce(greaterHours, NO_HOURS);
          const whileWaiting = [ready, ...inHands.map((one) => one.finishHours)].filter(
            (hour) => atMost(ready, hour) && compareHours(hour, startHours) < 0,
          );
          const busy = whileWaiting.map((hour) => inHands.filter((one) => isWorkedOn(one, hour)).length);
          expect(busy.every((count) => count === pairs)).toBe(true);
        }
      }),
    );
  });

  test("works only on days that have hours", () => {
    fc.assert(
      fc.property(anyKind, hands, calendar, (activities, pairs, time) => {
        const inHands = [...level(activities, time, pairs).levelled.values()].filter(
          (one) => one.hands !== undefined,
        );
        const idleDays = inHands.filter(
          ({ start, finish }) =>
            compareHours(time.hoursOn(start.date), start.hour) <= 0 ||
            compareHours(time.hoursOn(finish.date), finish.hour) < 0,
        );
        expect(idleDays).toEqual([]);
      }),
    );
  });
});

describe("any forecast", () => {
  test("has its later date not before its earlier one, and a chain that ends with the plan", () => {
    fc.assert(
      fc.property(anyKind, hands, calendar, (activities, pairs, time) => {
        const plan = level(activities, time, pairs);
        const found = forecast(plan);
        expect(found).toBeDefined();
        if (found === undefined) return;
        const { finish50, finish90, chain } = found;
        expect(compareMoments(finish50, finish90)).toBeLessThanOrEqual(0);
        const links = chain.ids.map((id) => plan.levelled.get(id));
        const last = [...plan.levelled.values()].reduce(
          (end, one) => (atMost(end, one.finishHours) ? one.finishHours : end),
          NO_HOURS,
        );
        expect(links.at(-1)?.finishHours).toEqual(last);
        // Link by link without an hour between.
        expect(links.slice(1).map((one) => one?.startHours)).toEqual(
          links.slice(0, -1).map((one) => one?.finishHours),
        );
      }),
    );
  });

  test("is what levelling gives with the reserve as one more job behind everything", () => {
    fc.assert(
      fc.property(anyKind, hands, calendar, (activities, pairs, time) => {
        const found = forecast(level(activities, time, pairs));
        fc.pre(found?.reserve.greaterThan(0) === true);
        const reserve: PlannedActivity = {
          ...own("reserve", 0, { after: activities.map(({ id }) => id) }),
          work: { kind: "own", remaining: { mean: hours(found.reserve.toString()), variance: NO_HOURS } },
        };
        const { levelled } = level([...activities, reserve], time, pairs);
        expect(levelled.get("reserve")?.finish).toEqual(found.finish90);
      }),
    );
  });

  test("is the same every time", () => {
    fc.assert(
      fc.property(anyKind, hands, calendar, (activities, pairs, time) => {
        expect(forecast(level(structuredClone(activities), time, pairs))).toEqual(
          forecast(level(activities, time, pairs)),
        );
      }),
    );
  });
});
