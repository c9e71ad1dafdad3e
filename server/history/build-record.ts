/** The record in git of one build, for an editor: its commits, its files as they were, and what changed. */
import type { Commit } from "./commit.ts";
import type { Comparison, WorkingBuild } from "./compare-revisions.ts";
import { compareRevisions } from "./compare-revisions.ts";
import type { GitFault } from "./git-fault.ts";
import { isGitFault } from "./git-fault.ts";
import type { ThingHistory } from "./history-of-thing.ts";
import { historyOfThing } from "./history-of-thing.ts";
import type { SubjectFault } from "./record/subject.ts";
import { foldersBelow } from "./recorded-build.ts";
import { recordedFile } from "./recorded-file.ts";
import { Repository } from "./repository.ts";
import { WrittenLaterLookup } from "./written-later.ts";

/** The files of a build as an editor has them. */
export type EditedBuild = Omit<WorkingBuild, "folder">;

export class BuildRecord {
  readonly writtenLater: WrittenLaterLookup;
  private readonly folder: string;

  /** @param folder of a build on disk; to be made only where its folder is trusted, since git is started there */
  constructor(folder: string) {
    this.folder = folder;
    this.writtenLater = new WrittenLaterLookup(folder);
  }

  /** The newest commits that touched a log of the build, newest first; `signal` ends what git is doing. */
  async commits(signal?: AbortSignal): Promise<readonly Commit[] | GitFault> {
    const repository = await Repository.around(this.folder, signal);
    if (isGitFault(repository)) return repository;
    const head = await repository.commit("HEAD");
    if (isGitFault(head)) return head;
    const others = await foldersBelow(repository, head);
    if (isGitFault(others)) return others;
    const commits = await repository.newestOfLogs(head, others);
    if (isGitFault(commits)) return commits;
    return commits.length === 0 ? { fault: "not recorded", folder: this.folder } : commits;
  }

  /** @param to the build as the editor has it, where it is undefined */
  compare(
    build: EditedBuild,
    from: string,
    to: string | undefined,
    signal?: AbortSignal,
  ): Promise<Comparison | GitFault> {
    return compareRevisions({ ...build, folder: this.folder }, from, to, signal);
  }

  /** The text of a log at a commit, by its path from the root of the repository; empty where there was none. */
  async text(revision: string, path: string, signal?: AbortSignal): Promise<string | GitFault> {
    const repository = await Repository.around(this.folder, signal);
    if (isGitFault(repository)) return repository;
    const commit = await repository.commit(revision);
    if (isGitFault(commit)) return commit;
    return await recordedFile(repository, commit, path);
  }

  history(
    build: EditedBuild,
    ref: string,
    signal?: AbortSignal,
  ): Promise<ThingHistory | GitFault | SubjectFault> {
    return historyOfThing({ ...build, folder: this.folder }, ref, signal);
  }
}
