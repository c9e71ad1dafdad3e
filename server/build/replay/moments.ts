/** Moments of a diary: how things stood, so that reading can begin again there once a later line is other. */
import { compareDates } from "../../quantities/dates.ts";
import type { DatedDay } from "../definitions.ts";
import { isSame, sharedBeginning } from "../remembered.ts";
import type { DaysInOrder } from "./days-in-order.ts";
import type { Replay } from "./replay.ts";

export interface Moment {
  /** The index of the first day that has not been read to its end. */
  readonly day: number;
  /** How many of its facts had been read; with none, the day had not begun. */
  readonly ofDay: number;
  /** How many facts had been read of the whole diary. */
  readonly facts: number;
  readonly replay: Replay;
}

/**
 * So many moments are kept of a diary, besides those of the day that was written in last: only the first key in another day
 * begins from one of them. Each holds a copy of all that has changed since the one before: with twice as many the server takes
 * 8 MB more at 100,000 lines.
 */
const MOMENTS = 4;

/** Where a diary begins to be another one. */
export interface Change {
  /** The index of the first day of a date that is other. */
  readonly day: number;
  /** The one day that was written in, as far as it begins with the same facts. */
  readonly within: { readonly day: number; readonly ofDay: number } | undefined;
}

/** Changes of definitions by one date belong together: then its first day is where the diary is another. */
export function firstChange(before: DaysInOrder, days: DaysInOrder): Change {
  const index = before.sharedBeginning(days);
  const [then, now] = [before.at(index), days.at(index)];
  const dates = [then?.date, now?.date].flatMap((date) => date ?? []).sort(compareDates);
  let day = index;
  while (day > 0 && dates[0] !== undefined && days.at(day - 1)?.date === dates[0]) day--;
  if (then?.site !== now?.site || then?.date !== now?.date) return { day, within: undefined };
  const defines = [...before.sameDate(day), ...days.sameDate(day)].some(({ changes }) => changes);
  const ofDay = then === undefined || now === undefined ? 0 : sharedBeginning(then.facts, now.facts);
  return { day, within: defines || ofDay === 0 ? undefined : { day: index, ofDay } };
}

/** Whether a day tells a diary what it told before: only its prose is other, or its hours. */
export function tellsTheSame(then: DatedDay, now: DatedDay): boolean {
  return then.site === now.site && then.date === now.date && isSame(then.facts, now.facts);
}

/** The latest of some moments at which a diary was not yet another one. */
export function lastBefore(
  { day, within }: Change,
  moments: readonly Moment[],
  inDay: Moment | undefined,
): Moment | undefined {
  const isInDay = inDay !== undefined && inDay.day === within?.day && inDay.ofDay <= within.ofDay;
  return isInDay ? inDay : moments.findLast((moment) => moment.day <= day);
}

/** The moments that are kept while a diary is being read. */
export class Moments {
  readonly beforeDays: Moment[] = [];
  /** The one within the day that was written in last. */
  inDay: Moment | undefined;
  private readonly replay: Replay;
  private readonly facts: { readonly length: number };
  /** So many days lie between two of them. */
  private readonly between: number;

  /**
   * @param earlier those of the diary before that still hold
   * @param days how many days there are; 0 where no moments are to be kept
   */
  constructor(replay: Replay, facts: { readonly length: number }, earlier: readonly Moment[], days: number) {
    this.replay = replay;
    this.facts = facts;
    this.between = days === 0 ? Number.POSITIVE_INFINITY : Math.ceil(days / MOMENTS);
    // Those that stand far enough apart, and the last: each edit would add one otherwise.
    for (const moment of earlier)
      if (moment === earlier.at(-1) || this.isFar(moment.day)) this.beforeDays.push(moment);
  }

  get all(): readonly Moment[] {
    return this.inDay === undefined ? this.beforeDays : [...this.beforeDays, this.inDay];
  }

  /** A day begins that is the first of its date: a moment is kept where one is asked for, or the last is far behind. */
  beforeDay(day: number, isAsked: boolean): void {
    const isNew = day > (this.beforeDays.at(-1)?.day ?? -1);
    if (this.between < Number.POSITIVE_INFINITY && isNew && (isAsked || this.isFar(day)))
      this.beforeDays.push(this.at(day, 0));
  }

  at(day: number, ofDay: number): Moment {
    const { facts, replay } = this;
    return { day, ofDay, facts: facts.length, replay: replay.copy(replay.gathered) };
  }

  /** Whether the last moment lies far behind a day; with none there, it does. */
  private isFar(day: number): boolean {
    return day >= (this.beforeDays.at(-1)?.day ?? Number.NEGATIVE_INFINITY) + this.between;
  }
}
