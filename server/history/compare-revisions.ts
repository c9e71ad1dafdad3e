/** A build at two revisions, or at one and as it is on disk now, compared on one day. */
import type { Build, BuildOptions } from "../build/build.ts";
import { readBuild } from "../build/build.ts";
import type { SourceFile } from "../build/source.ts";
import type { Change } from "./changes/change.ts";
import { compareBuilds } from "./changes/compare-builds.ts";
import type { Commit } from "./commit.ts";
import { Documents } from "./documents.ts";
import type { GitFault } from "./git-fault.ts";
import { isGitFault } from "./git-fault.ts";
import { recordedBuild } from "./recorded-build.ts";
import { Repository } from "./repository.ts";

/** The build as it is on disk. */
export interface WorkingBuild {
  readonly folder: string;
  readonly files: readonly SourceFile[];
  readonly options: BuildOptions;
}

/** A side of a comparison, by what the user called it; without a commit it is what is on disk. */
export interface Side {
  readonly revision: string | undefined;
  readonly commit: Commit | undefined;
}

export interface Comparison {
  readonly from: Side;
  readonly to: Side;
  readonly after: Build;
  readonly changes: readonly Change[];
  /** In a shallow clone, the day of its oldest commit. */
  readonly since: string | undefined;
}

/** @param to what is on disk, where it is undefined */
export async function compareRevisions(
  working: WorkingBuild,
  from: string,
  to: string | undefined,
): Promise<Comparison | GitFault> {
  const repository = await Repository.around(working.folder);
  if (isGitFault(repository)) return repository;
  const first = await repository.commit(from);
  if (isGitFault(first)) return first;
  const second = to === undefined ? undefined : await repository.commit(to);
  if (second !== undefined && isGitFault(second)) return second;
  const documents = new Documents();
  const old = await recordedBuild(repository, first, from, documents);
  if (isGitFault(old)) return old;
  const later =
    second === undefined || to === undefined
      ? workingFiles(working)
      : await recordedBuild(repository, second, to, documents);
  if (isGitFault(later)) return later;
  const after = readBuild(later.files, { ...working.options, photos: later.photos });
  // One day for both, so that what differs is the log and not the calendar.
  const before = readBuild(old.files, { ...working.options, on: after.today, photos: old.photos });
  return {
    from: { revision: from, commit: first },
    to: { revision: to, commit: second },
    after,
    changes: compareBuilds(before, after),
    since: repository.since,
  };
}

function workingFiles({ files, options: { photos } }: WorkingBuild) {
  return { files, photos: photos ?? (() => true) };
}
