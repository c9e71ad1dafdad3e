import { Document } from "../../grammar/document.ts";
import type { Build } from "../../server/build/build.ts";
import { readBuild } from "../../server/build/build.ts";
import type { SourceFile } from "../../server/build/source.ts";
import { lineOf } from "../../server/build/source.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import type { Complaint } from "../../server/rules/complaints.ts";
import { complaintsOf } from "../../server/rules/complaints.ts";

/** The clock of every log here that does not say `today:`. */
const CLOCK = "2026-06-01" as IsoDate;

/** The pictures that exist beside every log here. */
const PHOTOS: ReadonlySet<string> = new Set(["photos/disc.png"]);

/** A vehicle about which nothing is in doubt, for logs that say nothing of theirs. */
const KNOWN_VEHICLE = 'vehicle "Example"\n  past: known\n\n';

/** A log as one file; one without a vehicle is given one. */
export function withVehicle(text: string): string {
  return /^vehicle\b/m.test(text) ? text : KNOWN_VEHICLE + text;
}

export function readLog(text: string): Build {
  return readLogs([{ path: "log.cotter", text }]);
}

export function readLogs(files: readonly { readonly path: string; readonly text: string }[]): Build {
  const read = files.map(({ path, text }): SourceFile => ({ path, document: Document.read(text) }));
  return readBuild(read, { clock: CLOCK, photos: (path) => PHOTOS.has(path) });
}

/** The complaints about a log that still hold: those that later lines have overtaken are left out. */
export function currentComplaints(build: Build): readonly Complaint[] {
  const findings = build.findings.filter(({ standing }) => standing === "current");
  return complaintsOf({ ...build, findings }).complaints;
}

/** A complaint in one line, to compare and to read: `12 over-limit: thickness …`. */
export function inOneLine({ place, code, message }: Complaint): string {
  return `${lineOf(place)} ${code}: ${message}`;
}
