/** A git repository, asked what the record needs to know of it. */
import { randomUUID } from "node:crypto";
import { readBlobs } from "./blobs.ts";
import type { Commit, CommitWithLogs } from "./commit.ts";
import { COMMIT_FORMAT, commitOf } from "./commit.ts";
import { logWords, parseLog } from "./commit-log.ts";
import type { GitFault } from "./git-fault.ts";
import { isGitFault, notYours } from "./git-fault.ts";
import type { GitAnswer } from "./git-process.ts";
import { runGit } from "./git-process.ts";
import { isDay, revisionFault } from "./revision.ts";

/** A file of one revision: its path from the root of the repository, and the id of its content. */
export interface RecordedFile {
  readonly path: string;
  readonly blob: string;
}

const EVERY_LOG = ":(top,glob)**/*.cotter";

/** As many as one looks through. */
const MOST_NEWEST = 100;

export class Repository {
  /** The root of the working tree. */
  readonly root: string;
  /** The folder that was asked about, from the root: `""` for the root, else with `/` behind it. */
  readonly prefix: string;
  /** In a shallow clone, the day of its oldest commit. */
  readonly since: string | undefined;

  private readonly signal: AbortSignal | undefined;

  private constructor(
    { root, prefix }: FolderPlace,
    since: string | undefined,
    signal: AbortSignal | undefined,
  ) {
    this.root = root;
    this.prefix = prefix;
    this.since = since;
    this.signal = signal;
  }

  /**
   * The repository around a folder.
   * @param signal ends what git is doing; it has then failed
   */
  static async around(folder: string, signal?: AbortSignal): Promise<Repository | GitFault> {
    const answer = await askPlace(folder, "--is-shallow-repository", signal);
    if (isGitFault(answer)) return answer;
    const since = answer.more === "true" ? await oldestDay(answer.root) : undefined;
    return new Repository(answer, since, signal);
  }

  /**
   * The commit that a revision names; of a day the last one that was written by its end, by its author's clock, on the
   * branch that is checked out: a branch taken over later was not there yet.
   */
  async commit(revision: string): Promise<Commit | GitFault> {
    const fault = revisionFault(revision);
    if (fault !== undefined) return fault;
    const named = await this.lookUp(revision);
    if (named !== undefined) return named;
    if ((await this.lookUp("HEAD")) === undefined) return { fault: "no commit" };
    return isDay(revision)
      ? await this.lastBy(revision)
      : { fault: "unknown revision", revision, since: this.since };
  }

  /** Every regular file of a commit. */
  async files({ id }: Commit): Promise<readonly RecordedFile[] | GitFault> {
    const answer = await this.run(["ls-tree", "-r", "-z", "--full-tree", id]);
    if (isGitFault(answer)) return answer;
    return answer.out
      .toString("utf8")
      .split("\0")
      .flatMap((line) => {
        const [, blob, path] = /^100\d{3} blob ([0-9a-f]+)\t(.+)$/s.exec(line) ?? [];
        return blob === undefined || path === undefined ? [] : [{ path, blob }];
      });
  }

  /** Every commit up to one that touched a `.cotter` file, parents first, with what it did to them. */
  async commitsOfLogs(until: Commit): Promise<readonly CommitWithLogs[] | GitFault> {
    const mark = randomUUID();
    const answer = await this.run([...logWords(mark), until.id, "--", EVERY_LOG]);
    return isGitFault(answer) ? answer : parseLog(answer.out.toString("utf8"), mark);
  }

  /** The commits that one commit has behind it and another has not, parents first, in which a log was renamed. */
  async renamesOfLogs(without: Commit, until: Commit): Promise<readonly CommitWithLogs[] | GitFault> {
    const mark = randomUUID();
    const range = [until.id, `^${without.id}`];
    const answer = await this.run([...logWords(mark), "--diff-filter=R", ...range, "--", EVERY_LOG]);
    return isGitFault(answer) ? answer : parseLog(answer.out.toString("utf8"), mark);
  }

  /**
   * The newest commits up to one that touched a log below the folder that was asked about, newest first.
   * @param except folders that are left out, with `/` behind each
   */
  async newestOfLogs(until: Commit, except: readonly string[]): Promise<readonly Commit[] | GitFault> {
    const mark = randomUUID();
    const where = [
      `:(top,glob)${literally(this.prefix)}**/*.cotter`,
      ...except.map((folder) => `:(top,exclude,literal)${folder}`),
    ];
    const answer = await this.run([
      ...logWords(mark),
      `--max-count=${MOST_NEWEST}`,
      until.id,
      "--",
      ...where,
    ]);
    if (isGitFault(answer)) return answer;
    return parseLog(answer.out.toString("utf8"), mark)
      .filter(({ logs }) => logs.length > 0)
      .reverse();
  }

  contents(blobs: readonly string[]): Promise<ReadonlyMap<string, Buffer> | GitFault> {
    return readBlobs(this.root, blobs, this.signal);
  }

  /** Undefined where nothing has that name. */
  private async lookUp(revision: string): Promise<Commit | GitFault | undefined> {
    const words = ["rev-parse", "--verify", "--quiet", "--end-of-options", `${revision}^{commit}`];
    const answer = await runGit(this.root, words, { signal: this.signal });
    if (isGitFault(answer)) return answer;
    return answer.status === 0 ? await this.describe(answer.out.toString("latin1").trim()) : undefined;
  }

  private async lastBy(day: string): Promise<Commit | GitFault> {
    const answer = await this.run([
      "log",
      "--first-parent",
      "--no-show-signature",
      "--format=%H %as",
      "HEAD",
    ]);
    if (isGitFault(answer)) return answer;
    const lines = answer.out.toString("latin1").trimEnd().split("\n");
    const commits = lines.map((line) => line.split(" ") as [id: string, day: string]);
    const [last] = commits.find(([, written]) => written <= day) ?? [];
    if (last !== undefined) return await this.describe(last);
    const days = commits.map(([, written]) => written).sort();
    return { fault: "nothing by then", day, first: days[0] ?? "", since: this.since };
  }

  private async describe(id: string): Promise<Commit | GitFault> {
    const answer = await this.run(["log", "-1", "--no-show-signature", `--format=${COMMIT_FORMAT}`, id]);
    return isGitFault(answer) ? answer : commitOf(answer.out.toString("utf8").trimEnd().split("\0"));
  }

  private async run(words: readonly string[]): Promise<GitAnswer | GitFault> {
    const answer = await runGit(this.root, words, { signal: this.signal });
    if (isGitFault(answer) || answer.status === 0) return answer;
    return { fault: "failed", message: answer.error };
  }
}

/** A path within a pattern. */
function literally(path: string): string {
  return path.replace(/[\\*?[\]]/g, "\\$&");
}

/** Where a folder is, and the last commit there: one question for git, since it is asked at every hover. */
export async function lastCommitAround(folder: string): Promise<(FolderPlace & { head: string }) | GitFault> {
  const answer = await askPlace(folder, "HEAD");
  return isGitFault(answer) ? answer : { ...answer, head: answer.more };
}

interface FolderPlace {
  /** The root of the working tree. */
  readonly root: string;
  /** The folder, from the root: `""` for the root, else with `/` behind it. */
  readonly prefix: string;
}

/** @param word what `git rev-parse` is asked beside it, answered with one line */
async function askPlace(
  folder: string,
  word: string,
  signal?: AbortSignal,
): Promise<(FolderPlace & { readonly more: string }) | GitFault> {
  const words = ["rev-parse", "--show-prefix", "--path-format=absolute", "--show-toplevel", word];
  const answer = await runGit(folder, words, { signal });
  if (isGitFault(answer)) return answer;
  if (answer.status !== 0) return openFault(answer, folder);
  const [prefix = "", root = "", more = ""] = answer.out.toString("utf8").split("\n");
  return { root, prefix, more };
}

function openFault({ error }: GitAnswer, folder: string): GitFault {
  if (/ambiguous argument 'HEAD'/.test(error)) return { fault: "no commit" };
  const foreign = notYours(error, folder);
  if (foreign !== undefined) return foreign;
  if (/not a git repository/i.test(error)) return { fault: "no repository", folder };
  // Of a repository without files of its own, such as one that only receives.
  if (/must be run in a work tree/.test(error)) return { fault: "no repository", folder };
  return { fault: "failed", message: error };
}

async function oldestDay(root: string): Promise<string | undefined> {
  const answer = await runGit(root, [
    "rev-list",
    "--all",
    "--max-parents=0",
    "--format=%as",
    "--no-commit-header",
  ]);
  if (isGitFault(answer) || answer.status !== 0) return undefined;
  return answer.out.toString("latin1").trim().split("\n").sort()[0];
}
