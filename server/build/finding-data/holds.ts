import type { IsoDate } from "../../quantities/dates.ts";

/** What is wrong with hold points, snags and the order of jobs. */
export interface HoldFindings {
  "past-hold": {
    /** What was done: a job, or the running of something. */
    readonly is: "job" | "running";
    readonly what: string;
    /** The first shut hold point in the way. */
    readonly hold: string;
    readonly title: string | undefined;
    /** The one that stops it, where another before that is the first. */
    readonly stoppedBy: string | undefined;
    /** Since when its release has lapsed. */
    readonly lapsed: IsoDate | undefined;
    /** When its release was refused. */
    readonly refused: IsoDate | undefined;
    /** Whether it is shut for nothing but lines that could not be read. */
    readonly unread: boolean;
  };
  "release-lapsed": { readonly holds: readonly string[]; readonly open: readonly string[] };
  "released-with-open-items": {
    readonly hold: string;
    readonly title: string | undefined;
    readonly open: readonly string[];
  };
  "cleared-unknown-snag": {
    readonly word: "cleared" | "conceded";
    readonly name: string;
    readonly known: readonly string[];
    readonly clearedBefore: IsoDate | undefined;
  };
  "job-out-of-order": { readonly job: string; readonly before: readonly string[] };
}
