/** Plans to draw and to tell, in a few words. */
import type { IsoDate } from "../../server/quantities/dates.ts";
import type { HoldProgress, JobProgress, Programme, ProgrammeEntry } from "../../server/reports/programme.ts";

export function date(text: string): IsoDate {
  return text as IsoDate;
}

export function job(title: string, progress: JobProgress, awayAt?: string): ProgrammeEntry {
  return { kind: "job", ref: refOf(title), title, awayAt, progress };
}

export function hold(title: string, progress: HoldProgress, planned?: string): ProgrammeEntry {
  const aim = planned === undefined ? undefined : date(planned);
  return { kind: "hold", ref: refOf(title), title, planned: aim, progress };
}

function refOf(title: string): string {
  return title.toLowerCase().replaceAll(" ", "_");
}

export function planned(
  from: string,
  to: string,
  more: { begun?: string; latest?: string; critical?: boolean } = {},
): JobProgress {
  const { begun, latest, critical = false } = more;
  return {
    kind: "planned",
    from: date(from),
    to: date(to),
    begun: begun === undefined ? undefined : date(begun),
    latest: latest === undefined ? undefined : date(latest),
    critical,
  };
}

export function shut(reached?: string, lapsed = false): HoldProgress {
  return { kind: "shut", reached: reached === undefined ? undefined : date(reached), lapsed };
}

export function programme(changes: Partial<Programme> = {}): Programme {
  return {
    title: "The plan",
    today: date("2026-05-02"),
    past: [],
    entries: [],
    closed: [],
    finish50: undefined,
    finish90: undefined,
    ...changes,
  };
}
