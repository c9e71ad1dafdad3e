/** What changed between two revisions, as a report object. */
import { reportPlace } from "../reports/check.ts";
import type { Change, ChangedThing, ChangeKind } from "./changes/change.ts";
import type { Comparison, Side } from "./compare-revisions.ts";

export interface ChangesReport {
  readonly schema: "cotter/changes/1";
  readonly from: ReportedSide;
  readonly to: ReportedSide;
  /** The day on which both were looked at. */
  readonly today: string;
  readonly changes: readonly {
    readonly kind: ChangeKind;
    readonly ref: string;
    readonly what: ChangedThing;
    readonly title: string | null;
    readonly before: string | null;
    readonly after: string | null;
    readonly day: string | null;
    readonly standsOut: boolean;
    /** In which of the two it stands there. */
    readonly in: "from" | "to" | null;
    readonly file: string | null;
    readonly line: number | null;
  }[];
  readonly standOut: number;
  /** In a shallow clone, the day of its oldest commit. */
  readonly shallowSince: string | null;
}

interface ReportedSide {
  readonly revision: string | null;
  readonly commit: string | null;
  readonly date: string | null;
  readonly author: string | null;
  /** False where there was nothing of the build. */
  readonly hasBuild: boolean;
}

export function changesReport({ from, to, after, changes, since }: Comparison): ChangesReport {
  return {
    schema: "cotter/changes/1",
    from: reportSide(from),
    to: reportSide(to),
    today: after.today,
    changes: changes.map((change) => ({
      kind: change.kind,
      ref: change.ref,
      what: change.what,
      title: change.title ?? null,
      before: change.before ?? null,
      after: change.after ?? null,
      day: change.day ?? null,
      standsOut: change.standsOut,
      ...reportAt(change.at),
    })),
    standOut: changes.filter(({ standsOut }) => standsOut).length,
    shallowSince: since ?? null,
  };
}

function reportSide({ revision, commit, hasBuild }: Side): ReportedSide {
  return {
    revision: revision ?? null,
    commit: commit?.id ?? null,
    date: commit?.day ?? null,
    author: commit?.author ?? null,
    hasBuild,
  };
}

function reportAt(at: Change["at"]) {
  if (at === undefined) return { in: null, file: null, line: null };
  const { file, from } = reportPlace(at.place);
  return { in: at.side === "before" ? ("from" as const) : ("to" as const), file, line: from.line };
}
