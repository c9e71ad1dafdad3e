/** The report of `cotter check`: every complaint with its place. */
import type { Place } from "../build/source.ts";
import type { Complaint } from "../rules/complaint.ts";
import type { Severity } from "../rules/rule.ts";

/** Counted from 1; columns in UTF-16 units; ends are exclusive. */
export interface ReportedPosition {
  readonly line: number;
  readonly column: number;
}

export interface ReportedPlace {
  readonly file: string;
  readonly from: ReportedPosition;
  readonly to: ReportedPosition;
}

export interface CheckReport {
  readonly schema: "cotter/check/1";
  readonly complaints: readonly (ReportedPlace & {
    readonly code: string;
    readonly severity: Severity;
    readonly message: string;
    readonly seeAlso: readonly (ReportedPlace & { readonly message: string })[];
  })[];
  readonly counts: Readonly<Record<Severity, number>>;
}

export function checkReport(complaints: readonly Complaint[]): CheckReport {
  return {
    schema: "cotter/check/1",
    complaints: complaints.map(({ code, severity, message, place, seeAlso }) => ({
      code,
      severity,
      message,
      ...reportPlace(place),
      seeAlso: seeAlso.map((other) => ({ message: other.message, ...reportPlace(other.place) })),
    })),
    counts: countSeverities(complaints),
  };
}

export function countSeverities(
  complaints: readonly { readonly severity: Severity }[],
): Record<Severity, number> {
  const counts: Record<Severity, number> = { error: 0, warning: 0, information: 0, hint: 0 };
  for (const { severity } of complaints) counts[severity]++;
  return counts;
}

export function reportPlace({ site, start, end }: Place): ReportedPlace {
  return { file: site.file.path, from: positionOf(site, start), to: positionOf(site, end) };
}

function positionOf(site: Place["site"], offset: number): ReportedPosition {
  const { line, character } = site.file.document.positionIn(site.index, offset);
  return { line: line + 1, column: character + 1 };
}
