/** What is done again by the calendar: services of parts, and changes of fluids. */
import { addDuration } from "../quantities/calendar-duration.ts";
import type { IsoDate } from "../quantities/dates.ts";
import type { Quantity } from "../quantities/quantity.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { Standing } from "./standing.ts";
import type { DatedFact, PartState, SystemState } from "./states.ts";

export interface Interval {
  readonly every: Quantity;
  /** The record that asks for it. */
  readonly record: Place;
  /** When it was done last, or began; undefined where nobody knows. */
  readonly from: IsoDate | undefined;
  /** The fact that did it; undefined where none did. */
  readonly done: DatedFact | undefined;
  /** The last day in time; undefined where nobody knows. */
  readonly due: IsoDate | undefined;
}

/** Counted from the last service, else from when the item was fitted or made; what the last one said comes first. */
export function serviceOf({ definitions }: Standing, { node, item }: PartState): Interval | undefined {
  const sourced = definitions.one(node, "service");
  if (sourced === undefined) return undefined;
  const { every } = sourced.record;
  const { serviced } = item;
  const from = serviced?.date ?? item.since?.date ?? item.made;
  return {
    every,
    record: placeAt(sourced.site, sourced.record.at),
    from,
    done: serviced,
    due: serviced?.fact.until ?? dueAfter(from, every),
  };
}

/** Counted from the filling with which the fluid in a system is of an age. */
export function fluidChangeOf(
  { definitions }: Standing,
  { node, freshened }: SystemState,
): Interval | undefined {
  const sourced = definitions.one(node, "change");
  if (sourced === undefined) return undefined;
  const { every } = sourced.record;
  return {
    every,
    record: placeAt(sourced.site, sourced.record.at),
    from: freshened?.date,
    done: freshened,
    due: dueAfter(freshened?.date, every),
  };
}

function dueAfter(from: IsoDate | undefined, every: Quantity): IsoDate | undefined {
  const due = from === undefined ? undefined : addDuration(from, every);
  return typeof due === "string" ? due : undefined;
}
