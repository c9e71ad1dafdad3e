import type { IsoDate } from "./dates.ts";
import { addCalendar, addDays } from "./dates.ts";
import { Decimal } from "./decimal.ts";
import type { Quantity } from "./quantity.ts";
import { convert } from "./quantity.ts";
import { isFault } from "./quantity-fault.ts";
import { unit } from "./unit.ts";

/** Mean days of a month in the Gregorian calendar: 146097 days in 400 years of 12 months. */
const DAYS_IN_MEAN_MONTH = new Decimal(146097).div(4800);

/** Why a duration cannot be counted from a date. */
export interface DurationFault {
  readonly fault: "not-a-duration";
  readonly message: string;
}

/**
 * A date and a duration: months and years are calendar steps (a missing day becomes the month's last), days and weeks are
 * days; only whole months and whole days can be counted.
 */
export function addDuration(date: IsoDate, duration: Quantity): IsoDate | DurationFault {
  const months = convert(duration, unit("month"));
  if (!isFault(months)) {
    return months.value.isInteger()
      ? addCalendar(date, { months: months.value.toNumber() })
      : notWhole("months");
  }
  const days = convert(duration, unit("d"));
  if (isFault(days)) return { fault: "not-a-duration", message: days.message };
  return days.value.isInteger() ? addDays(date, days.value.toNumber()) : notWhole("days");
}

/**
 * Days of a duration, months and years by their mean length: for rates and ages, where a day more or less does not matter;
 * never for a due date. Undefined where it is no duration.
 */
export function approximateDays(duration: Quantity): Decimal | undefined {
  const months = convert(duration, unit("month"));
  if (!isFault(months)) return months.value.times(DAYS_IN_MEAN_MONTH);
  const days = convert(duration, unit("d"));
  return isFault(days) ? undefined : days.value;
}

function notWhole(steps: string): DurationFault {
  return { fault: "not-a-duration", message: `only whole ${steps} can be counted from a date` };
}
