/** What `cotter start` made, as a report object. */
import type { SetUp } from "./set-up-repository.ts";

export interface StartReport {
  readonly schema: "cotter/start/1";
  /** Absolute. */
  readonly folder: string;
  /** Those written, from the folder. */
  readonly files: readonly string[];
  readonly git: boolean;
  readonly repository: "made" | "around" | null;
}

/** @param setUp undefined where git was not asked for */
export function startReport(folder: string, files: readonly string[], setUp: SetUp | undefined): StartReport {
  const repository = setUp === undefined ? null : setUp.made ? "made" : "around";
  return { schema: "cotter/start/1", folder, files, git: setUp !== undefined, repository };
}
