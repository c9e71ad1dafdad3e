import type { IsoDate } from "../quantities/dates.ts";

/** Today by the clock and in the time zone of the machine. */
export function today(): IsoDate {
  const now = new Date();
  const two = (figure: number) => String(figure).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}` as IsoDate;
}
