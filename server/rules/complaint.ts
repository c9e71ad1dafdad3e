/** A complaint as it is shown: in words, graded, at its place. */
import type { Build } from "../build/build.ts";
import type { Place } from "../build/source.ts";
import type { Fix, Severity } from "./rule.ts";

export interface Complaint {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly place: Place;
  readonly seeAlso: readonly { readonly place: Place; readonly message: string }[];
  /** Its mends in the build that it is of. */
  readonly fixes: (build: Build) => readonly Fix[];
  /** False for an error on something whose failure can hurt: a reason beside it does not set it aside. */
  readonly waivable: boolean;
}

/** A complaint that a line of the log has set aside, with its reason. */
export interface Waived {
  readonly complaint: Complaint;
  readonly reason: string;
}

/** Severities that a build or an editor sets otherwise; `off` silences the rule. */
export type SeverityOverrides = ReadonlyMap<string, Severity | "off">;
