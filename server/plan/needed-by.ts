/** By when things are needed so that the hold points ahead keep their dates. */
import type { IsoDate } from "../quantities/dates.ts";
import { addDays, compareDates } from "../quantities/dates.ts";
import type { Hours } from "./hours.ts";
import { lesserHours, subtractHours } from "./hours.ts";
import type { PlannedActivity } from "./planned-activity.ts";
import { inNetwork } from "./planned-activity.ts";
import type { Precedence } from "./precedence.ts";
import { precedence } from "./precedence.ts";
import type { WorkingCalendar } from "./working-calendar.ts";
import { dawn } from "./working-calendar.ts";

/** A hold point among the activities, and the day it is planned for. */
export interface PlannedHold {
  readonly id: string;
  readonly planned: IsoDate;
}

/** The day on which an activity must begin at the latest, and the hold point that asks for it. */
export interface LatestBeginning {
  readonly date: IsoDate;
  readonly hold: string;
}

/**
 * For each activity that leads to a planned hold point, the day on which it must begin for the next of them, by date,
 * to keep its day: in the network, without regard to hands, with everything done when that day begins. It may be past.
 * A hold point whose day has gone by is passed over: it cannot be kept any more.
 */
export function latestBeginnings(
  activities: readonly PlannedActivity[],
  holds: readonly PlannedHold[],
  calendar: WorkingCalendar,
): ReadonlyMap<string, LatestBeginning> {
  const links = precedence(activities);
  const latest = new Map<string, LatestBeginning>();
  const ahead = holds.filter(({ planned }) => planned >= calendar.start.date);
  for (const hold of ahead.toSorted((a, b) => compareDates(a.planned, b.planned))) {
    for (const [id, start] of startsBefore(links, hold, calendar)) {
      const begins = calendar.workBegins(start);
      if (begins !== undefined && !latest.has(id)) latest.set(id, { date: begins.date, hold: hold.id });
    }
  }
  return latest;
}

/** The last day on which to order what takes so many calendar days to come. */
export function orderBy(neededBy: IsoDate, leadDays: number): IsoDate {
  return addDays(neededBy, -Math.ceil(leadDays));
}

/** Latest starts, in hours of work from the start of the plan, of what leads to the hold point. */
function startsBefore(
  links: Precedence<PlannedActivity>,
  hold: PlannedHold,
  calendar: WorkingCalendar,
): ReadonlyMap<string, Hours> {
  const starts = new Map<string, Hours>();
  for (const activity of links.order.toReversed()) {
    const finish =
      activity.id === hold.id
        ? calendar.hoursUntil(dawn(hold.planned))
        : links
            .behind(activity.id)
            .reduce<Hours | undefined>((least, { id }) => sooner(least, starts.get(id)), undefined);
    if (finish !== undefined) {
      starts.set(activity.id, subtractHours(finish, inNetwork(activity, calendar).hours));
    }
  }
  starts.delete(hold.id);
  return starts;
}

function sooner(a: Hours | undefined, b: Hours | undefined): Hours | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return lesserHours(a, b);
}
