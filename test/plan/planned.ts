/** Short ways to write activities, calendars and what became of them, for the tests of the plan. */

import { singleEstimate, threePointEstimate } from "../../server/plan/estimate.ts";
import type { Hours } from "../../server/plan/hours.ts";
import { decimalHours } from "../../server/plan/hours.ts";
import type { LevelledPlan } from "../../server/plan/levelling.ts";
import { level } from "../../server/plan/levelling.ts";
import type { PlannedActivity, PlannedWork } from "../../server/plan/planned-activity.ts";
import type { Moment, WorkingTime } from "../../server/plan/working-calendar.ts";
import { DEFAULT_WEEK, WorkingCalendar } from "../../server/plan/working-calendar.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { ZERO } from "../../server/quantities/decimal.ts";

export function date(text: string): IsoDate {
  return text as IsoDate;
}

/** Saturday 6 h and Sunday 4 h, from Saturday 2 May 2026, with nothing booked. */
export function calendarOf(changes: Partial<WorkingTime> = {}): WorkingCalendar {
  const time = { week: DEFAULT_WEEK, closed: [], today: date("2026-05-02"), bookedToday: ZERO };
  return new WorkingCalendar({ ...time, ...changes });
}

/** Hours, or optimistic, likely and pessimistic hours. */
type Time = number | readonly [number, number, number];

type More = Partial<Pick<PlannedActivity, "after" | "waits" | "started">>;

export function own(id: string, time: Time, more: More = {}): PlannedActivity {
  return activity(id, { kind: "own", remaining: estimate(time) }, more);
}

/** Time in days. */
export function outside(id: string, time: Time, more: More & { back?: IsoDate } = {}): PlannedActivity {
  const { back, ...rest } = more;
  return activity(id, { kind: "outside", remaining: estimate(time), back }, rest);
}

export function hold(id: string, more: More = {}): PlannedActivity {
  return activity(id, { kind: "hold" }, more);
}

/** A day on which a part comes, or before which a job is not to start. */
export function until(text: string, why = "parts") {
  return { until: date(text), why };
}

/** `2026-05-03 2` is two hours into the work of that day. */
export function momentText(moment: Moment | undefined): string {
  return moment === undefined ? "never" : `${moment.date} ${numberOf(moment.hour)}`;
}

export function numberOf(hours: Hours): number {
  return decimalHours(hours).toNumber();
}

/** When each starts and finishes, by id. */
export function schedule(
  activities: readonly PlannedActivity[],
  { calendar = calendarOf(), hands = 1 } = {},
): Readonly<Record<string, string>> {
  return scheduleOf(level(activities, calendar, hands));
}

function scheduleOf({ levelled }: LevelledPlan): Readonly<Record<string, string>> {
  return Object.fromEntries(
    [...levelled].map(([id, { start, finish }]) => [id, `${momentText(start)} to ${momentText(finish)}`]),
  );
}

function activity(id: string, work: PlannedWork, more: More): PlannedActivity {
  return { id, work, after: [], waits: [], started: false, ...more };
}

function estimate(time: Time) {
  return typeof time === "number" ? singleEstimate(time) : threePointEstimate(...time);
}
