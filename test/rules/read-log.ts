import { Document } from "../../grammar/document.ts";
import type { Build } from "../../server/build/build.ts";
import { readBuild } from "../../server/build/build.ts";
import type { SourceFile } from "../../server/build/source.ts";
import { lineOf } from "../../server/build/source.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import type { Complaint } from "../../server/rules/complaint.ts";

/** The clock of every log here that does not say `today:`. */
const CLOCK = "2026-06-01" as IsoDate;

/** Logs as one build; no photo is missed. */
export function readLogs(files: readonly { readonly path: string; readonly text: string }[]): Build {
  const read = files.map(({ path, text }): SourceFile => ({ path, document: Document.read(text) }));
  return readBuild(read, { clock: CLOCK });
}

/** A complaint in one line, to compare and to read: `12 over-limit: thickness …`. */
export function inOneLine({ place, code, message }: Complaint): string {
  return `${lineOf(place)} ${code}: ${message}`;
}
