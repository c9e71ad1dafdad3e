import type { IsoDate } from "../quantities/dates.ts";

const MINUTE = 60_000;

let known: { readonly minute: number; readonly date: IsoDate } | undefined;

/** Today by the clock and in the time zone of the machine. It is asked for at each key, and changes on a full minute only. */
export function today(): IsoDate {
  const time = Date.now();
  const minute = Math.floor(time / MINUTE);
  if (known?.minute !== minute) known = { minute, date: dateAt(time) };
  return known.date;
}

function dateAt(time: number): IsoDate {
  const now = new Date(time);
  const two = (figure: number) => String(figure).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}` as IsoDate;
}
