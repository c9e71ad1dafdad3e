/** The example logs of the rules, read as builds. */
import { Document } from "../../grammar/document.ts";
import type { Build } from "../build/build.ts";
import { readBuild } from "../build/build.ts";
import type { IsoDate } from "../quantities/dates.ts";
import type { Complaint } from "./complaint.ts";
import { complaintsOf } from "./complaints.ts";
import type { Rule } from "./rule.ts";

/** The day on which every example is read that does not say `today:`. */
const CLOCK = "2026-06-01" as IsoDate;

/** The pictures that lie beside every example. */
const PHOTOS: ReadonlySet<string> = new Set(["photos/disc.png"]);

/** A vehicle about which nothing is in doubt. */
const KNOWN_VEHICLE = 'vehicle "Example"\n  past: known\n\n';

/** The example of a rule as it is read: one without a vehicle is given one, unless that is its point. */
export function exampleText({ code }: Pick<Rule, "code">, text: string): string {
  return code === "no-vehicle" || /^vehicle\b/m.test(text) ? text : KNOWN_VEHICLE + text;
}

export function readExample(text: string): Build {
  const files = [{ path: "example.cotter", document: Document.read(text) }];
  return readBuild(files, { clock: CLOCK, photos: (path) => PHOTOS.has(path) });
}

/** The complaints about an example that still hold: those that later lines have overtaken are left out. */
export function currentComplaints(build: Build): readonly Complaint[] {
  const findings = build.findings.filter(({ standing }) => standing === "current");
  return complaintsOf({ ...build, findingLists: [findings] }).complaints;
}
