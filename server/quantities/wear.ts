import type { IsoDate } from "./dates.ts";
import { daysBetween } from "./dates.ts";
import type { Decimal } from "./decimal.ts";
import { decimal, ZERO } from "./decimal.ts";
import type { Limits } from "./limits.ts";
import type { Quantity } from "./quantity.ts";
import {
  absolute,
  asDifference,
  compare,
  computedQuantity,
  convert,
  divide,
  quantityOf,
  subtract,
} from "./quantity.ts";
import { isFault } from "./quantity-fault.ts";
import { unit } from "./unit.ts";
import type { Side } from "./verdict.ts";

/** One reading of a characteristic of one item, with the hours it had run by then (several readings: their mean). */
export interface WearReading {
  readonly date: IsoDate;
  readonly runningHours: Decimal;
  readonly value: Quantity;
}

/** How fast a characteristic goes towards its limit. */
export interface Wear {
  /** Against running hours where any were recorded between the readings, else against days. */
  readonly over: "h" | "d";
  /** Change per hour or day of the fitted line, with its sign: `-0.02 mm/h`. */
  readonly rate: Quantity;
  readonly side: Side;
  readonly limit: Quantity;
  /** First to last reading, in h or d. */
  readonly span: Quantity;
  /** From the last reading to the limit, in h or d; undefined where that is further than one span, as far as a line is drawn. */
  readonly remaining: Quantity | undefined;
}

/**
 * The least squares line through two or more readings of one item, in the order of their dates. Undefined unless it heads
 * for a limit not yet reached and the readings moved more than √2 · U, the uncertainty of a difference of two of them
 * (JCGM 100:2008, equation 10). The line: C. F. Gauss's least squares, as in JCGM 100:2008, annex H.3.
 */
export function wear(
  readings: readonly WearReading[],
  limits: Limits,
  uncertainty: Quantity | undefined,
): Wear | undefined {
  const [first, last] = [readings[0], readings.at(-1)];
  // One reading has not moved.
  if (first === undefined || last === undefined) return undefined;
  if (!movedBeyond(first.value, last.value, uncertainty)) return undefined;
  const over = last.runningHours.greaterThan(first.runningHours) ? "h" : "d";
  const points = pointsOf(readings, over);
  const line = points === undefined ? undefined : leastSquares(points);
  if (points === undefined || line === undefined || line.slope.isZero()) return undefined;
  const side = line.slope.isNegative() ? "lower" : "upper";
  const limit = limits[side];
  const bound = limit === undefined ? undefined : convert(limit, first.value.unit);
  if (limit === undefined || bound === undefined || isFault(bound)) return undefined;
  const span = points.at(-1)?.x ?? ZERO;
  const remaining = bound.value.minus(line.intercept).div(line.slope).minus(span);
  if (remaining.isNegative()) return undefined;
  const rate = rateOf(line.slope, first.value, over);
  if (rate === undefined) return undefined;
  return {
    over,
    rate,
    side,
    limit,
    span: quantityOf(span, unit(over)),
    remaining: remaining.greaterThan(span) ? undefined : computedQuantity(remaining, unit(over), 3),
  };
}

interface Point {
  readonly x: Decimal;
  readonly y: Decimal;
}

/** Hours or days since the first reading, and readings in the unit of the first. */
function pointsOf(readings: readonly WearReading[], over: "h" | "d"): Point[] | undefined {
  const [first] = readings;
  if (first === undefined) return undefined;
  const points: Point[] = [];
  for (const { date, runningHours, value } of readings) {
    const y = convert(value, first.value.unit);
    if (isFault(y)) return undefined;
    const x = over === "h" ? runningHours.minus(first.runningHours) : decimal(daysBetween(first.date, date));
    points.push({ x, y: y.value });
  }
  return points;
}

/** Undefined where all readings stand at one time. */
function leastSquares(points: readonly Point[]): { slope: Decimal; intercept: Decimal } | undefined {
  const meanX = mean(points.map((point) => point.x));
  const meanY = mean(points.map((point) => point.y));
  let [squares, products] = [ZERO, ZERO];
  for (const { x, y } of points) {
    squares = squares.plus(x.minus(meanX).pow(2));
    products = products.plus(x.minus(meanX).times(y.minus(meanY)));
  }
  if (squares.isZero()) return undefined;
  const slope = products.div(squares);
  return { slope, intercept: meanY.minus(slope.times(meanX)) };
}

function mean(values: readonly Decimal[]): Decimal {
  return values.reduce((total, value) => total.plus(value), ZERO).div(values.length);
}

function movedBeyond(first: Quantity, last: Quantity, uncertainty: Quantity | undefined): boolean {
  const moved = subtract(last, first);
  if (isFault(moved)) return false;
  const threshold = uncertainty ?? { ...asDifference(first), value: ZERO };
  const least = { ...asDifference(threshold), value: threshold.value.abs().times(decimal(2).squareRoot()) };
  return compare(absolute(moved), least) === 1;
}

function rateOf(slope: Decimal, reading: Quantity, over: "h" | "d"): Quantity | undefined {
  const change = { ...computedQuantity(slope, reading.unit, 3), dimension: asDifference(reading).dimension };
  const rate = divide(change, quantityOf(1, unit(over)));
  return isFault(rate) ? undefined : rate;
}
