/** When it will be done: as likely as not, and with nine chances in ten. */
import type { Decimal } from "../quantities/decimal.ts";
import { decimal } from "../quantities/decimal.ts";
import type { Hours } from "./hours.ts";
import { addHours, compareHours, decimalHours, greaterHours, hours, NO_HOURS } from "./hours.ts";
import type { LevelledActivity, LevelledPlan } from "./levelling.ts";
import { varianceOf } from "./planned-activity.ts";
import type { Moment } from "./working-calendar.ts";
import { laterMoment } from "./working-calendar.ts";

/** What nine in ten of a normal distribution do not exceed, in standard deviations over the mean. */
export const NINE_IN_TEN: Decimal = decimal("1.2816");

export interface Forecast {
  /** The last planned finish of the levelled plan. */
  readonly finish50: Moment;
  /** The same with the reserve behind it. */
  readonly finish90: Moment;
  /** Hours of work added behind the plan: deviations times the standard deviation of its longest chain. */
  readonly reserve: Decimal;
  readonly chain: LongestChain;
}

export interface LongestChain {
  /** In order of work. */
  readonly ids: readonly string[];
  /** Summed, in hours of work squared. */
  readonly variance: Hours;
}

/** The forecast of a plan; undefined where nothing is planned, or something in it has no place. */
export function forecast(plan: LevelledPlan): Forecast | undefined {
  const activities = [...plan.levelled.values()];
  const [first, ...others] = activities;
  if (first === undefined || plan.unplanned.length > 0) return undefined;
  const finish50 = others.reduce((last, { finish }) => laterMoment(last, finish), first.finish);
  const chain = longestChain(plan);
  const reserve = reserveHours(chain.variance, NINE_IN_TEN);
  if (reserve.isZero()) return { finish50, finish90: finish50, reserve, chain };
  const until = addHours(lastFinish(activities), hours(reserve));
  const finish90 = plan.calendar.workEnds(until);
  return finish90 === undefined ? undefined : { finish50, finish90, reserve, chain };
}

/** So many standard deviations of a variance: what is added to a mean for more than even chances. */
export function reserveHours(variance: Hours, deviations: Decimal): Decimal {
  return decimalHours(variance).sqrt().times(deviations);
}

/**
 * The chain of activities, each bound by the one before it or by its hands, that ends last. Where several are as long,
 * the one with the greatest variance, so that the reserve is rather too large; then a predecessor before hands, and what
 * has its place first.
 */
function longestChain({ levelled, calendar }: LevelledPlan): LongestChain {
  const chains = new Map<string, { readonly variance: Hours; readonly behind: string | undefined }>();
  for (const [id, { activity, bounds }] of levelled) {
    let [variance, behind]: [Hours, string | undefined] = [NO_HOURS, undefined];
    for (const bound of bounds) {
      const chain = bound.kind === "wait" ? undefined : chains.get(bound.id);
      if (chain === undefined || bound.kind === "wait") continue;
      if (behind === undefined || compareHours(chain.variance, variance) > 0) {
        [variance, behind] = [chain.variance, bound.id];
      }
    }
    chains.set(id, { variance: addHours(variance, varianceOf(activity.work, calendar)), behind });
  }
  const end = lastFinish([...levelled.values()]);
  const ids: string[] = [];
  let [variance, last]: [Hours, string | undefined] = [NO_HOURS, undefined];
  for (const [id, { finishHours }] of levelled) {
    const chain = chains.get(id);
    if (chain === undefined || compareHours(finishHours, end) !== 0) continue;
    if (last === undefined || compareHours(chain.variance, variance) > 0)
      [variance, last] = [chain.variance, id];
  }
  for (let id = last; id !== undefined; id = chains.get(id)?.behind) ids.unshift(id);
  return { ids, variance };
}

function lastFinish(activities: readonly LevelledActivity[]): Hours {
  return activities.reduce((last, { finishHours }) => greaterHours(last, finishHours), NO_HOURS);
}
