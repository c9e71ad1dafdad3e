/** What a log is called at another commit: renames as git finds them, followed commit by commit. */
import type { Commit, CommitWithLogs } from "./commit.ts";
import type { GitFault } from "./git-fault.ts";
import { isGitFault } from "./git-fault.ts";
import type { Repository } from "./repository.ts";

/** Paths are from the root of the repository. */
export class Renames {
  /** Commits that only one of the two has behind it, parents first. */
  private readonly onlyFirst: readonly CommitWithLogs[];
  private readonly onlySecond: readonly CommitWithLogs[];

  private constructor(onlyFirst: readonly CommitWithLogs[], onlySecond: readonly CommitWithLogs[]) {
    this.onlyFirst = onlyFirst;
    this.onlySecond = onlySecond;
  }

  static readonly none = new Renames([], []);

  static async between(repository: Repository, first: Commit, second: Commit): Promise<Renames | GitFault> {
    if (first.id === second.id) return Renames.none;
    const [onlyFirst, onlySecond] = await Promise.all([
      repository.renamesOfLogs(second, first),
      repository.renamesOfLogs(first, second),
    ]);
    if (isGitFault(onlyFirst)) return onlyFirst;
    if (isGitFault(onlySecond)) return onlySecond;
    return new Renames(onlyFirst, onlySecond);
  }

  /** @param path at the second commit */
  atFirst(path: string): string {
    return after(this.onlyFirst, before(this.onlySecond, path));
  }

  /** @param path at the first commit */
  atSecond(path: string): string {
    return after(this.onlySecond, before(this.onlyFirst, path));
  }
}

/** The path before some commits of a file that has a path behind them. */
function before(commits: readonly CommitWithLogs[], path: string): string {
  return [...commits].reverse().reduce((later, { logs }) => {
    for (const log of logs) if (log.is === "renamed" && log.path === later) return log.from;
    return later;
  }, path);
}

function after(commits: readonly CommitWithLogs[], path: string): string {
  return commits.reduce((earlier, { logs }) => {
    for (const log of logs) if (log.is === "renamed" && log.from === earlier) return log.path;
    return earlier;
  }, path);
}
