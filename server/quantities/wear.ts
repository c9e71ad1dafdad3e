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

/** How fast a characteristic goes towards a limit that is no further away than the readings lie apart. */
export interface Wear {
  /** Against running hours where any were recorded between the readings, else against days. */
  readonly over: "h" | "d";
  /** Change per hour or day of the fitted line, with its sign: `-0.02 mm/h`. */
  readonly rate: Quantity;
  readonly side: Side;
  readonly limit: Quantity;
  /** First to last reading, in h or d. */
  readonly span: Quantity;
  /** From the last reading to the limit, in h or d: one span at the most, as far as a line is drawn. */
  readonly remaining: Quantity;
}

/** Sums over points, of which the line through them follows. */
interface Sums {
  readonly count: number;
  readonly x: Decimal;
  readonly y: Decimal;
  readonly squares: Decimal;
  readonly products: Decimal;
}

const NO_POINTS: Sums = { count: 0, x: ZERO, y: ZERO, squares: ZERO, products: ZERO };

/** Readings of one item, in the order of their dates. What one more needs to know of them is summed up once. */
export class EarlierReadings {
  readonly first: WearReading | undefined;
  private readonly readings: readonly WearReading[];
  private readonly known = new Map<Wear["over"], Sums | undefined>();

  constructor(readings: readonly WearReading[]) {
    this.first = readings[0];
    this.readings = readings;
  }

  /** Sums over hours or days since the first reading, and readings in its unit; undefined where one has another dimension. */
  sums(over: Wear["over"]): Sums | undefined {
    if (!this.known.has(over)) this.known.set(over, this.sumUp(over));
    return this.known.get(over);
  }

  private sumUp(over: Wear["over"]): Sums | undefined {
    let sums: Sums | undefined = NO_POINTS;
    for (const reading of this.readings)
      sums = sums && this.first && withPoint(sums, pointOf(this.first, reading, over));
    return sums;
  }
}

/**
 * The least squares line through earlier readings of an item and the last one. Undefined unless it heads for a limit not
 * yet reached, within one span of the readings, and they moved more than √2 · U, the uncertainty of a difference of two of
 * them (JCGM 100:2008, equation 10). The line: C. F. Gauss's least squares, as in JCGM 100:2008, annex H.3.
 */
export function wear(
  earlier: EarlierReadings,
  last: WearReading,
  limits: Limits,
  uncertainty: Quantity | undefined,
): Wear | undefined {
  const { first } = earlier;
  // One reading has not moved.
  if (first === undefined || !movedBeyond(first.value, last.value, uncertainty)) return undefined;
  const over = last.runningHours.greaterThan(first.runningHours) ? "h" : "d";
  const point = pointOf(first, last, over);
  const before = earlier.sums(over);
  const sums = before && withPoint(before, point);
  if (point === undefined || sums === undefined) return undefined;
  const { x: span } = point;
  const { count, x, y, squares, products } = sums;
  // The slope is rise over run; both are multiples of the same, so that nothing is divided before the end.
  const run = squares.times(count).minus(x.times(x));
  const rise = products.times(count).minus(x.times(y));
  // All readings at one time, or a level line.
  if (run.isZero() || rise.isZero()) return undefined;
  const side = rise.isNegative() ? "lower" : "upper";
  const limit = limits[side];
  const bound = limit === undefined ? undefined : convert(limit, first.value.unit);
  if (limit === undefined || bound === undefined || isFault(bound)) return undefined;
  const reached = run.times(bound.value.times(count).minus(y)).plus(rise.times(x)).div(rise.times(count));
  const remaining = reached.minus(span);
  if (remaining.isNegative() || remaining.greaterThan(span)) return undefined;
  const rate = rateOf(rise.div(run), first.value, over);
  if (rate === undefined) return undefined;
  return {
    over,
    rate,
    side,
    limit,
    span: quantityOf(span, unit(over)),
    remaining: computedQuantity(remaining, unit(over), 3),
  };
}

interface Point {
  readonly x: Decimal;
  readonly y: Decimal;
}

/** Hours or days since the first reading, and the reading in the unit of the first. */
function pointOf(first: WearReading, reading: WearReading, over: Wear["over"]): Point | undefined {
  const y = convert(reading.value, first.value.unit);
  if (isFault(y)) return undefined;
  const x =
    over === "h"
      ? reading.runningHours.minus(first.runningHours)
      : decimal(daysBetween(first.date, reading.date));
  return { x, y: y.value };
}

function withPoint(sums: Sums, point: Point | undefined): Sums | undefined {
  if (point === undefined) return undefined;
  const { x, y } = point;
  return {
    count: sums.count + 1,
    x: sums.x.plus(x),
    y: sums.y.plus(y),
    squares: sums.squares.plus(x.times(x)),
    products: sums.products.plus(x.times(y)),
  };
}

const ROOT_OF_TWO = decimal(2).squareRoot();

function movedBeyond(first: Quantity, last: Quantity, uncertainty: Quantity | undefined): boolean {
  const moved = subtract(last, first);
  if (isFault(moved)) return false;
  const threshold = uncertainty ?? { ...asDifference(first), value: ZERO };
  const least = { ...asDifference(threshold), value: threshold.value.abs().times(ROOT_OF_TWO) };
  return compare(absolute(moved), least) === 1;
}

function rateOf(slope: Decimal, reading: Quantity, over: "h" | "d"): Quantity | undefined {
  const change = { ...computedQuantity(slope, reading.unit, 3), dimension: asDifference(reading).dimension };
  const rate = divide(change, quantityOf(1, unit(over)));
  return isFault(rate) ? undefined : rate;
}
