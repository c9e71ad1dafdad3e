/**
 * The plan levelled for the hands there are, in one pass and without going back: whenever hands are free, of the jobs
 * that may start then the one with the least late start goes first, ties in order of definition.
 *
 * Where more than one reading is possible, the plan takes these:
 * - A job may start when all before it is done and every day it waits for has come. Hands do not stand idle for a job
 *   that may not start yet.
 * - A job that the log has started goes on before anything new is begun. It too waits for what is before it and for its
 *   parts, and holds no hands meanwhile.
 * - What is away is back when its last day begins, a part is there when its day begins, and part of a day is a day.
 * - A hold point is passed when all before it is done, whatever day it is planned for.
 */
import { addDays } from "../quantities/dates.ts";
import type { Hours } from "./hours.ts";
import {
  addHours,
  compareHours,
  greaterHours,
  isNoHours,
  lesserHours,
  NO_HOURS,
  wholeAbove,
} from "./hours.ts";
import type { Network } from "./network.ts";
import { network } from "./network.ts";
import type { PlannedActivity, Wait } from "./planned-activity.ts";
import { inNetwork } from "./planned-activity.ts";
import type { Precedence } from "./precedence.ts";
import { precedence } from "./precedence.ts";
import type { Moment, WorkingCalendar } from "./working-calendar.ts";
import { dawn, laterMoment } from "./working-calendar.ts";

/** Why something does not start earlier: no hour of work lies between this and its start. */
export type Bound =
  | { readonly kind: "after"; readonly id: string }
  | { readonly kind: "hands"; readonly id: string }
  | { readonly kind: "wait"; readonly wait: Wait };

export interface LevelledActivity {
  readonly activity: PlannedActivity;
  readonly start: Moment;
  readonly finish: Moment;
  /** Start and finish in hours of work from the start of the plan. */
  readonly startHours: Hours;
  readonly finishHours: Hours;
  /** Which pair of hands, from 0; undefined where it takes none. */
  readonly hands: number | undefined;
  /** Empty where it starts with the plan. */
  readonly bounds: readonly Bound[];
}

export interface LevelledPlan {
  readonly network: Network;
  readonly calendar: WorkingCalendar;
  /** By id, in the order in which they were placed: each behind all that binds it. */
  readonly levelled: ReadonlyMap<string, LevelledActivity>;
  /** Ids of what has no place, because the week has no hours for it or for something before it; in order of definition. */
  readonly unplanned: readonly string[];
}

/** Levels the activities, given in order of definition. A circle of `after` loses a link, as in the network. */
export function level(
  activities: readonly PlannedActivity[],
  calendar: WorkingCalendar,
  hands: number,
): LevelledPlan {
  const figures = network(activities.map((activity) => inNetwork(activity, calendar)));
  const levelled = new Levelling(activities, calendar, figures, hands).run();
  const unplanned = activities.map(({ id }) => id).filter((id) => !levelled.has(id));
  return { network: figures, calendar, levelled, unplanned };
}

/** Own work before which everything has its place, and when it may start. */
interface Candidate {
  readonly activity: PlannedActivity;
  readonly hours: Hours;
  readonly ready: Hours;
}

/** One pair of hands: from when it is free, and the job that it was given last. */
interface Hands {
  free: Hours;
  last: string | undefined;
}

class Levelling {
  private readonly activities: readonly PlannedActivity[];
  private readonly calendar: WorkingCalendar;
  private readonly figures: Network["figures"];
  private readonly links: Precedence<PlannedActivity>;
  private readonly placeInFile: ReadonlyMap<string, number>;
  private readonly hands: readonly Hands[];
  private readonly levelled = new Map<string, LevelledActivity>();
  /** How many of those directly before it have no place yet. */
  private readonly missing = new Map<string, number>();
  private readonly candidates = new Set<Candidate>();

  constructor(
    activities: readonly PlannedActivity[],
    calendar: WorkingCalendar,
    { figures }: Network,
    hands: number,
  ) {
    this.activities = activities;
    this.calendar = calendar;
    this.figures = figures;
    this.links = precedence(activities);
    this.placeInFile = new Map(activities.map(({ id }, place) => [id, place]));
    // More pairs of hands than jobs change nothing.
    const pairs = Math.min(hands, activities.length);
    this.hands = Array.from({ length: pairs }, () => ({ free: NO_HOURS, last: undefined }));
  }

  run(): ReadonlyMap<string, LevelledActivity> {
    for (const { id } of this.activities) this.missing.set(id, this.links.before(id).length);
    this.admit(this.activities.filter(({ id }) => this.missing.get(id) === 0));
    const first = this.hands[0];
    while (first !== undefined && this.candidates.size > 0) {
      const hands = this.hands.reduce(
        (least, one) => (compareHours(one.free, least.free) < 0 ? one : least),
        first,
      );
      this.give(hands);
    }
    return this.levelled;
  }

  /** Gives a pair of hands its next job: the first, by the rule, of those that may start as soon as there is one. */
  private give(hands: Hands): void {
    const [some, ...others] = this.candidates;
    if (some === undefined) return;
    const soonest = others.reduce((least, { ready }) => lesserHours(least, ready), some.ready);
    const at = greaterHours(hands.free, soonest);
    const chosen = [...this.candidates]
      .filter(({ ready }) => compareHours(ready, at) <= 0)
      .reduce((best, one) => (this.goesBefore(one.activity, best.activity) ? one : best));
    this.candidates.delete(chosen);
    const { activity, hours } = chosen;
    const until = addHours(at, hours);
    const [start, finish] = [this.calendar.workBegins(at), this.calendar.workEnds(until)];
    if (start === undefined || finish === undefined) return;
    const bounds = this.boundsAt(activity, at);
    if (hands.last !== undefined && compareHours(hands.free, at) === 0) {
      bounds.push({ kind: "hands", id: hands.last });
    }
    this.levelled.set(activity.id, {
      activity,
      start,
      finish,
      startHours: at,
      finishHours: until,
      hands: this.hands.indexOf(hands),
      bounds,
    });
    hands.free = until;
    hands.last = activity.id;
    this.admit(this.nowComplete(activity));
  }

  private goesBefore(a: PlannedActivity, b: PlannedActivity): boolean {
    if (a.started !== b.started) return a.started;
    const order = compareHours(this.latestStart(a), this.latestStart(b));
    return order < 0 || (order === 0 && this.place(a) < this.place(b));
  }

  /** Places what takes no hands, and all that thereby has everything before it placed; own work becomes a candidate. */
  private admit(complete: readonly PlannedActivity[]): void {
    const queue = [...complete];
    for (const activity of queue) {
      const { work } = activity;
      if (work.kind === "own" && !isNoHours(work.remaining.mean)) {
        this.candidates.add({ activity, hours: work.remaining.mean, ready: this.readyHours(activity) });
      } else {
        this.placeWithoutHands(activity);
        queue.push(...this.nowComplete(activity));
      }
    }
  }

  private placeWithoutHands(activity: PlannedActivity): void {
    const begun = this.before(activity).reduce(
      (last, { finish }) => laterMoment(last, finish),
      this.calendar.start,
    );
    const start = activity.waits.reduce((last, { until }) => laterMoment(last, dawn(until)), begun);
    const finish = this.finishWithoutHands(activity, start);
    const startHours = this.calendar.hoursUntil(start);
    this.levelled.set(activity.id, {
      activity,
      start,
      finish,
      startHours,
      finishHours: this.calendar.hoursUntil(finish),
      hands: undefined,
      bounds: this.boundsAt(activity, startHours),
    });
  }

  private finishWithoutHands({ work }: PlannedActivity, start: Moment): Moment {
    if (work.kind !== "outside") return start;
    if (work.back !== undefined) return laterMoment(start, dawn(work.back));
    const days = wholeAbove(work.remaining.mean);
    return days === 0 ? start : dawn(addDays(start.date, days));
  }

  private readyHours(activity: PlannedActivity): Hours {
    const begun = this.before(activity).reduce((last, one) => greaterHours(last, one.finishHours), NO_HOURS);
    return activity.waits.reduce((last, wait) => greaterHours(last, this.hoursUntil(wait)), begun);
  }

  private boundsAt(activity: PlannedActivity, start: Hours): Bound[] {
    const after = this.before(activity)
      .filter(({ finishHours }) => compareHours(finishHours, start) === 0)
      .map((one): Bound => ({ kind: "after", id: one.activity.id }));
    const waits = activity.waits
      .filter(
        (wait) => wait.until > this.calendar.start.date && compareHours(this.hoursUntil(wait), start) === 0,
      )
      .map((wait): Bound => ({ kind: "wait", wait }));
    return [...after, ...waits];
  }

  private nowComplete({ id }: PlannedActivity): readonly PlannedActivity[] {
    return this.links.behind(id).filter((next) => {
      const left = (this.missing.get(next.id) ?? 0) - 1;
      this.missing.set(next.id, left);
      return left === 0;
    });
  }

  private before({ id }: PlannedActivity): readonly LevelledActivity[] {
    return this.links.before(id).flatMap((one) => this.levelled.get(one.id) ?? []);
  }

  private hoursUntil({ until }: Wait): Hours {
    return this.calendar.hoursUntil(dawn(until));
  }

  private latestStart({ id }: PlannedActivity): Hours {
    return this.figures.get(id)?.latestStart ?? NO_HOURS;
  }

  private place({ id }: PlannedActivity): number {
    return this.placeInFile.get(id) ?? 0;
  }
}
