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
import type { RecordedBuild } from "./recorded-build.ts";
import { recordedBuild } from "./recorded-build.ts";
import { Renames } from "./renames.ts";
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
  /** The build's folder, from the root of the repository, with `/` behind it; empty for the root. */
  readonly prefix: string;
  /** False where there was nothing of the build: everything is added, or taken out. */
  readonly hasBuild: boolean;
}

export interface Comparison {
  readonly from: Side;
  readonly to: Side;
  readonly before: Build;
  readonly after: Build;
  readonly changes: readonly Change[];
  /** How logs were renamed from the one to the other. */
  readonly renames: Renames;
  /** In a shallow clone, the day of its oldest commit. */
  readonly since: string | undefined;
}

/** @param to what is on disk, where it is undefined */
export async function compareRevisions(
  working: WorkingBuild,
  from: string,
  to: string | undefined,
  signal?: AbortSignal,
): Promise<Comparison | GitFault> {
  const repository = await Repository.around(working.folder, signal);
  if (isGitFault(repository)) return repository;
  const first = await repository.commit(from);
  if (isGitFault(first)) return first;
  const second = to === undefined ? undefined : await repository.commit(to);
  if (second !== undefined && isGitFault(second)) return second;
  const documents = new Documents();
  const old = await recordedBuild(repository, first, documents);
  if (isGitFault(old)) return old;
  const later =
    second === undefined
      ? workingFiles(working, repository.prefix)
      : await recordedBuild(repository, second, documents);
  if (isGitFault(later)) return later;
  if (old.files.length === 0 && later.files.length === 0)
    return { fault: "no build", from, to: to ?? "", folder: repository.prefix };
  const renames = await renamesBetween(repository, [old, first], [later, second]);
  if (isGitFault(renames)) return renames;
  const after = readBuild(later.files, { ...working.options, photos: later.photos });
  // One day for both, so that what differs is the log and not the calendar.
  const before = readBuild(old.files, { ...working.options, on: after.today, photos: old.photos });
  return {
    from: sideOf(from, first, old),
    to: sideOf(to, second, later),
    before,
    after,
    changes: compareBuilds(before, after),
    renames,
    since: repository.since,
  };
}

function workingFiles({ files, options: { photos } }: WorkingBuild, prefix: string): RecordedBuild {
  return { prefix, files, photos: photos ?? (() => true) };
}

function sideOf(
  revision: string | undefined,
  commit: Commit | undefined,
  { prefix, files }: RecordedBuild,
): Side {
  return { revision, commit, prefix, hasBuild: files.length > 0 };
}

/** Git is not asked where both sides have files of the same names. */
async function renamesBetween(
  repository: Repository,
  [old, first]: readonly [RecordedBuild, Commit],
  [later, second]: readonly [RecordedBuild, Commit | undefined],
): Promise<Renames | GitFault> {
  if (namesOf(old) === namesOf(later)) return Renames.none;
  const until = second ?? (await repository.commit("HEAD"));
  return isGitFault(until) ? until : await Renames.between(repository, first, until);
}

function namesOf({ prefix, files }: RecordedBuild): string {
  return files
    .map(({ path }) => prefix + path)
    .sort()
    .join("\n");
}
