/** What is still to be done, as the plan sees it: jobs that are not done, and hold points that are not released. */
import type { IsoDate } from "../quantities/dates.ts";
import type { Estimate } from "./estimate.ts";
import type { Hours } from "./hours.ts";
import { greaterHours, NO_HOURS, timesHours } from "./hours.ts";
import type { NetworkActivity } from "./network.ts";
import type { Linked } from "./precedence.ts";
import type { WorkingCalendar } from "./working-calendar.ts";
import { dawn } from "./working-calendar.ts";

export type PlannedWork =
  /** Takes one pair of hands. Remaining hours. */
  | { readonly kind: "own"; readonly remaining: Estimate }
  /**
   * Takes calendar days and no hands. Remaining days; `back` is the day on which something that is already away is
   * expected, and counts instead of them.
   */
  | { readonly kind: "outside"; readonly remaining: Estimate; readonly back?: IsoDate | undefined }
  /** Takes no time: passed as soon as all before it is done. The day it is planned for is an aim, no constraint. */
  | { readonly kind: "hold" };

/** A day that must have come: the `start:` of a job, or the arrival of a part. It is there when the day begins. */
export interface Wait {
  readonly until: IsoDate;
  /** In words, for whoever asks what it waits for. */
  readonly why: string;
}

export interface PlannedActivity extends Linked {
  readonly work: PlannedWork;
  readonly waits: readonly Wait[];
  /** The log says that it was begun: it goes on before anything new is begun. */
  readonly started: boolean;
}

/** The activity in the network, in hours of work: a supplier's days as the hours that the week has in as many. */
export function inNetwork(activity: PlannedActivity, calendar: WorkingCalendar): NetworkActivity {
  const { id, after, work, waits } = activity;
  const notBefore = waits.map(({ until }) => calendar.hoursUntil(dawn(until))).reduce(greaterHours, NO_HOURS);
  return { id, after, hours: hoursOf(work, calendar), notBefore };
}

/** Variance in hours of work, squared. */
export function varianceOf(work: PlannedWork, calendar: WorkingCalendar): Hours {
  if (work.kind === "hold") return NO_HOURS;
  if (work.kind === "own") return work.remaining.variance;
  const hoursInDay = calendar.hoursInDays({ numerator: 1n, denominator: 1n });
  return timesHours(work.remaining.variance, timesHours(hoursInDay, hoursInDay));
}

function hoursOf(work: PlannedWork, calendar: WorkingCalendar): Hours {
  switch (work.kind) {
    case "own":
      return work.remaining.mean;
    case "outside":
      if (work.back === undefined) return calendar.hoursInDays(work.remaining.mean);
      return greaterHours(calendar.hoursUntil(dawn(work.back)), NO_HOURS);
    case "hold":
      return NO_HOURS;
  }
}
