/** The days of a diary in the order in which they are read. */
import type { IsoDate } from "../../quantities/dates.ts";
import { compareDates } from "../../quantities/dates.ts";
import type { DayBlock } from "../definitions.ts";
import { inOneList } from "../list-under.ts";
import { Remembered } from "../remembered.ts";

export type DatedDay = DayBlock & { readonly date: IsoDate };

/**
 * The dated days of all files by date, within a date by file and then by line. The days of a file are mostly in order, and
 * files mostly follow each other.
 */
export function inDateOrder(lists: readonly (readonly DayBlock[])[]): readonly DatedDay[] {
  const sorted = lists.map(datedIn).filter(({ length }) => length > 0);
  const inTurn = [...sorted].sort((a, b) => compareDates(firstDate(a), firstDate(b)));
  const follow = inTurn.every((list, index) => {
    const last = inTurn[index - 1]?.at(-1);
    return last === undefined || last.date < firstDate(list);
  });
  return follow ? inOneList(inTurn) : inOneList(sorted).sort((a, b) => compareDates(a.date, b.date));
}

const datedDays = new Remembered<readonly DayBlock[], readonly DatedDay[]>();

/** The dated days of one file, by date. */
function datedIn(days: readonly DayBlock[]): readonly DatedDay[] {
  return datedDays.of(days, [], () =>
    days
      .filter((day): day is DatedDay => day.date !== undefined)
      .sort((a, b) => compareDates(a.date, b.date)),
  );
}

function firstDate([first]: readonly DatedDay[]): IsoDate {
  return first?.date as IsoDate;
}

/** Of days in order those that are no later. */
export function until(days: readonly DatedDay[], today: IsoDate): readonly DatedDay[] {
  const count = days.findLastIndex(({ date }) => date <= today) + 1;
  return count === days.length ? days : days.slice(0, count);
}

/** The blocks from an index on that are of one date. */
export function sameDate(inOrder: readonly DatedDay[], index: number): readonly DatedDay[] {
  let end = index + 1;
  while (end < inOrder.length && inOrder[end]?.date === inOrder[index]?.date) end++;
  return inOrder.slice(index, end);
}
