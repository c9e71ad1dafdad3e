/**
 * Readings against a limit, drawn in a line of text: `8.4 ┃···○·····●······┃ 9.5`. A bar is a limit, a broken bar the
 * end of the scale where there is none; `●` is the newest reading, `○` an earlier one.
 */
import type { Limits } from "../../quantities/limits.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import { convert } from "../../quantities/quantity.ts";
import { isFault } from "../../quantities/quantity-fault.ts";

const WIDTH = 32;

/** @param readings oldest first, several of one measurement each by itself; undefined where they cannot be drawn together */
export function limitPlot(readings: readonly Quantity[], limits: Limits): string | undefined {
  const bound = limits.upper ?? limits.lower;
  if (bound === undefined || readings.length === 0) return undefined;
  const inUnit = (quantity: Quantity | undefined) => {
    const converted = quantity && convert(quantity, bound.unit);
    return converted === undefined || isFault(converted) ? undefined : converted.value.toNumber();
  };
  const values = readings.map(inUnit).filter((value) => value !== undefined);
  if (values.length === 0) return undefined;
  const ends = scaleEnds(inUnit(limits.lower), inUnit(limits.upper), inUnit(limits.fresh), values);
  return ends === undefined ? undefined : draw(ends, values);
}

interface End {
  readonly value: number;
  /** Whether it is a limit, or only where the drawing ends. */
  readonly isLimit: boolean;
}

interface Ends {
  readonly low: End;
  readonly high: End;
}

function scaleEnds(
  lower: number | undefined,
  upper: number | undefined,
  fresh: number | undefined,
  values: readonly number[],
): Ends | undefined {
  const all = [...values, ...(fresh === undefined ? [] : [fresh])];
  const least = Math.min(...all);
  const most = Math.max(...all);
  const low: End =
    lower === undefined ? { value: Math.min(0, least), isLimit: false } : { value: lower, isLimit: true };
  const high: End =
    upper === undefined
      ? { value: Math.max(most, low.value), isLimit: false }
      : { value: upper, isLimit: true };
  return high.value > low.value ? { low, high } : undefined;
}

/** Readings beyond a limit stand outside of its bar, at a distance that is not to scale. */
function draw({ low, high }: Ends, values: readonly number[]): string {
  const inside = [..."·".repeat(WIDTH)];
  let [below, above] = [" ", " "];
  for (const [index, value] of values.entries()) {
    const mark = index === values.length - 1 ? "●" : "○";
    if (low.isLimit && value < low.value) below = stronger(below, mark);
    else if (high.isLimit && value > high.value) above = stronger(above, mark);
    else {
      const share = (value - low.value) / (high.value - low.value);
      const at = Math.min(WIDTH - 1, Math.max(0, Math.floor(share * WIDTH)));
      inside[at] = stronger(inside[at] ?? "·", mark);
    }
  }
  const bar = ({ isLimit }: End) => (isLimit ? "┃" : "┆");
  return `${figure(low.value)} ${below}${bar(low)}${inside.join("")}${bar(high)}${above} ${figure(high.value)}`;
}

function stronger(there: string, mark: string): string {
  return there === "●" ? there : mark;
}

function figure(value: number): string {
  return String(Number(value.toPrecision(6)));
}
