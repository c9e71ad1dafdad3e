/** What the drawing of a plan shows: the diary so far, jobs and hold points on their days, and the forecast. */
import type { ClosedRange } from "../plan/working-calendar.ts";
import type { IsoDate } from "../quantities/dates.ts";

export interface Programme {
  readonly title: string;
  readonly today: IsoDate;
  /** Days of the diary, in order; hours undefined where none are stated. */
  readonly past: readonly { readonly date: IsoDate; readonly hours: number | undefined }[];
  /** From top to bottom. */
  readonly entries: readonly ProgrammeEntry[];
  readonly closed: readonly ClosedRange[];
  readonly finish50: IsoDate | undefined;
  readonly finish90: IsoDate | undefined;
}

export type ProgrammeEntry = ProgrammeJob | ProgrammeHold;

export interface ProgrammeJob {
  readonly kind: "job";
  /** Its name in the log. */
  readonly ref: string;
  readonly title: string;
  /** Who does it; undefined for own work. */
  readonly awayAt: string | undefined;
  readonly progress: JobProgress;
}

export type JobProgress =
  /** Both days included, as all below. */
  | { readonly kind: "done"; readonly from: IsoDate; readonly to: IsoDate }
  | {
      readonly kind: "planned";
      readonly from: IsoDate;
      readonly to: IsoDate;
      /** The day on which the log says it was begun. */
      readonly begun: IsoDate | undefined;
      /** The day by which it must be done for the whole not to be later; undefined to leave its float out. */
      readonly latest: IsoDate | undefined;
      readonly critical: boolean;
    }
  /** The week has no hours for it, or for something before it. */
  | { readonly kind: "unplanned" };

export interface ProgrammeHold {
  readonly kind: "hold";
  /** Its name in the log. */
  readonly ref: string;
  readonly title: string;
  /** The day it is planned for, in the log. */
  readonly planned: IsoDate | undefined;
  readonly progress: HoldProgress;
}

export type HoldProgress =
  | { readonly kind: "released"; readonly on: IsoDate }
  /** `reached`: the day on which the plan has done all before it. `lapsed`: it was released before. */
  | { readonly kind: "shut"; readonly reached: IsoDate | undefined; readonly lapsed: boolean };

/** The day that a hold point is planned for, where the plan reaches it only later. */
export function missedDay({ planned, progress }: ProgrammeHold): IsoDate | undefined {
  if (progress.kind !== "shut" || planned === undefined || progress.reached === undefined) return undefined;
  return progress.reached > planned ? planned : undefined;
}
