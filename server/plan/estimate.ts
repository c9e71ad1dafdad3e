/** How long a job takes, and how sure that is: the three-point estimate of PERT. */
import type { Decimal } from "../quantities/decimal.ts";
import type { Hours } from "./hours.ts";
import {
  addHours,
  compareHours,
  hours,
  isNoHours,
  NO_HOURS,
  shareOf,
  subtractHours,
  timesHours,
} from "./hours.ts";

/** Mean in hours, or in days for outside work; variance in its square. */
export interface Estimate {
  readonly mean: Hours;
  readonly variance: Hours;
}

const SIXTH: Hours = { numerator: 1n, denominator: 6n };
const FOUR: Hours = { numerator: 4n, denominator: 1n };

/** Mean (a + 4 m + b) / 6 and variance ((b - a) / 6)²; Malcolm, Roseboom, Clark and Fazar, Operations Research 7 (1959). */
export function threePointEstimate(
  optimistic: Decimal | number,
  likely: Decimal | number,
  pessimistic: Decimal | number,
): Estimate {
  const [least, most] = [hours(optimistic), hours(pessimistic)];
  const sum = addHours(addHours(least, timesHours(hours(likely), FOUR)), most);
  const deviation = timesHours(subtractHours(most, least), SIXTH);
  return { mean: timesHours(sum, SIXTH), variance: timesHours(deviation, deviation) };
}

/** One figure, without a spread. */
export function singleEstimate(value: Decimal | number): Estimate {
  return { mean: hours(value), variance: NO_HOURS };
}

/**
 * What is left after so much work: never less than nothing, and the deviation shrinks in the same proportion as the
 * mean. Work booked beyond the mean leaves nothing, though the job is not done.
 */
export function remainingEstimate(estimate: Estimate, worked: Decimal | number): Estimate {
  const left = subtractHours(estimate.mean, hours(worked));
  if (compareHours(left, NO_HOURS) <= 0 || isNoHours(estimate.mean))
    return { mean: NO_HOURS, variance: NO_HOURS };
  const share = shareOf(left, estimate.mean);
  return { mean: left, variance: timesHours(estimate.variance, timesHours(share, share)) };
}
