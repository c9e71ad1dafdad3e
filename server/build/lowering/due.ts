/** What a place asks for: what a value there must measure, and how that is said to the author. */
import type { DimensionName } from "../../quantities/dimension.ts";

export interface Due {
  /** One of these; none where the name of a characteristic decides. */
  readonly dimensions: readonly DimensionName[];
  /** In words, with an example. */
  readonly expected: string;
  /** Units to offer, the likeliest first. */
  readonly units: readonly string[];
}

function due(expected: string, units: string, ...dimensions: DimensionName[]): Due {
  return { dimensions, expected, units: units.split(" ").filter((unit) => unit !== "") };
}

/** Whatever is measured. */
export const ANY = due("a figure with its unit, such as 9.12 mm", "");
export const LENGTH = due("a length, such as 14 mm", "mm in thou", "length");
export const CABLE = due("a length, such as 3.2 m", "m mm ft", "length");
export const AREA = due("an area, such as 2.5 mm2", "mm2", "area");
export const VOLUME = due("a volume, such as 0.6 l", "l ml imp_pt", "volume");
export const TORQUE = due("a torque, such as 24 N.m", "N.m lbf.ft lbf.in", "torque");
/** What is turned behind a torque. */
export const TURNING = due(
  "an angle, turns or flats, such as 90 deg",
  "deg turn flat",
  "angle",
  "turn",
  "flat",
);
export const PRESSURE = due("a pressure, such as 70 bar", "bar psi", "pressure");
export const VOLTAGE = due("a voltage, such as 12 V", "V", "voltage");
export const CURRENT = due("a current, such as 15 A", "A", "current");
export const LOAD = due("a current or a power, such as 11 A or 60 W", "A W", "current", "power");
export const SHARE = due("a percentage, such as 20 %", "%", "ratio");
export const DROP = due("a percentage or a voltage, such as 3 % or 0.3 V", "% V", "ratio", "voltage");
/** A short time that is held or taken. */
export const TIME = due("a time, such as 2 min", "min h s", "time");
export const WORKING_TIME = due("hours or minutes, such as 2 h 30 min", "h min", "time");
export const DAYS = due("calendar days, such as 5 d", "d week", "time");
/** Steps of the calendar, in which lives, services and calibrations are counted. */
export const CALENDAR = due("a time, such as 12 month", "month year week d", "calendar", "time");
/** What running is counted in. */
export const RUNNING = due(
  "hours, a distance or runs, such as 10 h, 60 km or 5 run",
  "h km run",
  "time",
  "length",
  "run",
);
