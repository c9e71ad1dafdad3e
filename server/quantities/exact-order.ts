import { decimal } from "./decimal.ts";
import type { Quantity } from "./quantity.ts";
import type { Rational } from "./rational.ts";
import { addRational, compareRational, multiplyRational, rational } from "./rational.ts";

/**
 * -1, 0 or 1 as `value + shift` is less than, equal to or more than `limit`, exactly, whatever their units: a reading of
 * 1 in with 0.004 mm on top of it is neither above nor below 25.404 mm. `shift` is a difference; the dimensions agree.
 */
export function compareShifted(value: Quantity, shift: Quantity | undefined, limit: Quantity): -1 | 0 | 1 {
  if (value.unit === limit.unit && (shift === undefined || shift.unit === value.unit)) {
    const shifted = shift === undefined ? value.value : value.value.plus(shift.value);
    return shifted.comparedTo(limit.value) as -1 | 0 | 1;
  }
  const asReadings = value.dimension.kind === "point" || limit.dimension.kind === "point";
  const start = coherent(value, asReadings);
  const shifted = shift === undefined ? start : addRational(start, coherent(shift, false));
  return compareRational(shifted, coherent(limit, asReadings));
}

/** The exact value in coherent units; of a temperature reading from absolute zero. */
function coherent({ value, unit }: Quantity, asReading: boolean): Rational {
  const exact = rational(decimal(value).toString());
  const fromZero = asReading && unit.offset !== undefined ? addRational(exact, unit.offset) : exact;
  return multiplyRational(fromZero, unit.factor);
}
