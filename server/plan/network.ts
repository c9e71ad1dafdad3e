/** The critical-path method, in exact hours of work from the start of the plan. */
import type { Hours } from "./hours.ts";
import {
  addHours,
  compareHours,
  greaterHours,
  isNoHours,
  lesserHours,
  NO_HOURS,
  subtractHours,
} from "./hours.ts";
import type { Circle, Linked, Precedence } from "./precedence.ts";
import { precedence } from "./precedence.ts";

export interface NetworkActivity extends Linked {
  /** Remaining mean; none for a hold point. */
  readonly hours: Hours;
  /** Hours of work from the start of the plan before which it cannot begin. */
  readonly notBefore?: Hours | undefined;
}

export interface NetworkFigures {
  readonly earliestStart: Hours;
  readonly earliestFinish: Hours;
  readonly latestStart: Hours;
  readonly latestFinish: Hours;
  /** How far it can slip without the whole being later. */
  readonly totalFloat: Hours;
  /** How far it can slip without anything behind it being later. */
  readonly freeFloat: Hours;
  readonly critical: boolean;
}

export interface Network {
  /** By id, in order of definition. */
  readonly figures: ReadonlyMap<string, NetworkFigures>;
  /** The greatest earliest finish, from which the late dates are counted. */
  readonly finish: Hours;
  /** Ids of all critical activities, in order of work. */
  readonly criticalPath: readonly string[];
  /** Left out of it; see `precedence`. */
  readonly circles: readonly Circle[];
}

interface Times {
  readonly start: Hours;
  readonly finish: Hours;
}

/** Early and late dates, floats and the critical path; always has an answer. */
export function network(activities: readonly NetworkActivity[]): Network {
  const links = precedence(activities);
  const early = earlyTimes(links);
  const finish = [...early.values()].reduce((last, times) => greaterHours(last, times.finish), NO_HOURS);
  const late = lateTimes(links, finish);
  const figures = new Map<string, NetworkFigures>();
  for (const { id } of activities) {
    const [first, last] = [timesOf(early, id), timesOf(late, id)];
    const nextStart = leastStart(links, id, early, finish);
    const totalFloat = subtractHours(last.start, first.start);
    figures.set(id, {
      earliestStart: first.start,
      earliestFinish: first.finish,
      latestStart: last.start,
      latestFinish: last.finish,
      totalFloat,
      freeFloat: subtractHours(nextStart, first.finish),
      critical: isNoHours(totalFloat),
    });
  }
  const criticalPath = links.order
    .filter(({ id }) => figures.get(id)?.critical)
    .sort((a, b) => compareHours(timesOf(early, a.id).start, timesOf(early, b.id).start))
    .map(({ id }) => id);
  return { figures, finish, criticalPath, circles: links.circles };
}

function earlyTimes(links: Precedence<NetworkActivity>): ReadonlyMap<string, Times> {
  const times = new Map<string, Times>();
  for (const { id, hours, notBefore } of links.order) {
    let start = greaterHours(notBefore ?? NO_HOURS, NO_HOURS);
    for (const earlier of links.before(id)) start = greaterHours(start, timesOf(times, earlier.id).finish);
    times.set(id, { start, finish: addHours(start, hours) });
  }
  return times;
}

function lateTimes(links: Precedence<NetworkActivity>, end: Hours): ReadonlyMap<string, Times> {
  const times = new Map<string, Times>();
  for (const { id, hours } of [...links.order].reverse()) {
    const finish = leastStart(links, id, times, end);
    times.set(id, { start: subtractHours(finish, hours), finish });
  }
  return times;
}

/** The first start among those behind it; the end where nothing is. */
function leastStart(
  links: Precedence<NetworkActivity>,
  id: string,
  times: ReadonlyMap<string, Times>,
  end: Hours,
): Hours {
  return links.behind(id).reduce((least, next) => lesserHours(least, timesOf(times, next.id).start), end);
}

function timesOf(times: ReadonlyMap<string, Times>, id: string): Times {
  return times.get(id) ?? { start: NO_HOURS, finish: NO_HOURS };
}
