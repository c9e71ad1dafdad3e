/** The days of a diary in the order in which they are read. */
import type { IsoDate } from "../../quantities/dates.ts";
import { compareDates } from "../../quantities/dates.ts";
import type { DatedDay, DayBlock } from "../definitions.ts";
import { isDated } from "../definitions.ts";
import { inOneList } from "../list-under.ts";
import { Remembered, sharedBeginning } from "../remembered.ts";

/** Days in order, list by list: what two diaries share is told by their lists, of which few are other. */
export class DaysInOrder {
  private readonly lists: readonly (readonly DatedDay[])[];
  /** The index of the first day of each list. */
  private readonly starts: readonly number[];
  readonly length: number;

  /** @param lists none of them empty, each in order, and each of them behind the one before */
  constructor(lists: readonly (readonly DatedDay[])[]) {
    let length = 0;
    this.lists = lists;
    this.starts = lists.map((list) => {
      length += list.length;
      return length - list.length;
    });
    this.length = length;
  }

  /** The day of an index; undefined where there is none. */
  at(index: number): DatedDay | undefined {
    if (index < 0 || index >= this.length) return undefined;
    const list = this.starts.findLastIndex((start) => start <= index);
    return this.lists[list]?.[index - (this.starts[list] as number)];
  }

  /** Those that are no later than a date. */
  until(date: IsoDate): DaysInOrder {
    const whole = this.lists.findLastIndex(([first]) => (first as DatedDay).date <= date);
    const last = this.lists[whole];
    if (last === undefined) return new DaysInOrder([]);
    const count = last.findLastIndex((day) => day.date <= date) + 1;
    if (whole === this.lists.length - 1 && count === last.length) return this;
    const part = count === last.length ? last : last.slice(0, count);
    return new DaysInOrder([...this.lists.slice(0, whole), part]);
  }

  /** The blocks from an index on that are of one date. */
  sameDate(index: number): readonly DatedDay[] {
    const days: DatedDay[] = [];
    const date = this.at(index)?.date;
    for (let end = index; end < this.length && this.at(end)?.date === date; end++)
      days.push(this.at(end) as DatedDay);
    return days;
  }

  /** The last blocks, as far as they are of a date. */
  atTheEnd(date: IsoDate): readonly DatedDay[] {
    let start = this.length;
    while (this.at(start - 1)?.date === date) start--;
    return this.sameDate(start);
  }

  /** How many days two diaries begin with alike. */
  sharedBeginning(other: DaysInOrder): number {
    const shared = this.lists.findIndex((list, index) => list !== other.lists[index]);
    const most = Math.min(this.length, other.length);
    let count = shared < 0 ? most : (this.starts[shared] as number);
    // The lists that are other begin at the same day.
    count += sharedBeginning(this.lists[shared] ?? [], other.lists[shared] ?? []);
    while (count < most && this.at(count) === other.at(count)) count++;
    return count;
  }
}

/**
 * The dated days of all files by date, within a date by file and then by line. The days of a file are mostly in order, and
 * files mostly follow each other.
 */
export function inDateOrder(lists: readonly (readonly DayBlock[])[]): DaysInOrder {
  const sorted = lists
    .filter(({ length }) => length > 0)
    .map(datedIn)
    .filter(({ length }) => length > 0);
  const inTurn = [...sorted].sort((a, b) => compareDates(firstDate(a), firstDate(b)));
  const follow = inTurn.every((list, index) => {
    const last = inTurn[index - 1]?.at(-1);
    return last === undefined || last.date < firstDate(list);
  });
  if (follow) return new DaysInOrder(inTurn);
  return new DaysInOrder([inOneList(sorted).sort((a, b) => compareDates(a.date, b.date))]);
}

const datedDays = new Remembered<readonly DayBlock[], readonly DatedDay[]>();

/** The dated days of one file, by date. */
function datedIn(days: readonly DayBlock[]): readonly DatedDay[] {
  return datedDays.of(days, [], () => days.filter(isDated).sort((a, b) => compareDates(a.date, b.date)));
}

function firstDate([first]: readonly DatedDay[]): IsoDate {
  return first?.date as IsoDate;
}
