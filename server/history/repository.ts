/** A git repository, asked what the record needs to know of it. */
import { randomUUID } from "node:crypto";
import { realpath } from "node:fs/promises";
import { withSlashes } from "../workspace/disk.ts";
import { relativeTo } from "../workspace/file-store.ts";
import { readBlobs } from "./blobs.ts";
import type { Commit, CommitWithLogs } from "./commit.ts";
import { COMMIT_FORMAT, commitOf } from "./commit.ts";
import { logWords, parseLog } from "./commit-log.ts";
import type { GitFault } from "./git-fault.ts";
import { isGitFault } from "./git-fault.ts";
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

  private constructor(root: string, prefix: string, since: string | undefined) {
    this.root = root;
    this.prefix = prefix;
    this.since = since;
  }

  /** The repository around a folder. */
  static async around(folder: string): Promise<Repository | GitFault> {
    const answer = await runGit(folder, [
      "rev-parse",
      "--path-format=absolute",
      "--show-toplevel",
      "--is-shallow-repository",
    ]);
    if (isGitFault(answer)) return answer;
    if (answer.status !== 0) return openFault(answer, folder);
    const [root = "", shallow] = answer.out.toString("utf8").trimEnd().split("\n");
    const inside = relativeTo(withSlashes(root), withSlashes(await realpath(folder)));
    const prefix = inside === withSlashes(root) ? "" : `${inside}/`;
    const since = shallow === "true" ? await oldestDay(root) : undefined;
    return new Repository(root, prefix, since);
  }

  /** The commit that a revision names; of a day the last one of that day. */
  async commit(revision: string): Promise<Commit | GitFault> {
    const fault = revisionFault(revision);
    if (fault !== undefined) return fault;
    const named = await this.lookUp(revision);
    if (named !== undefined) return named;
    if ((await this.lookUp("HEAD")) === undefined) return { fault: "no commit" };
    const onDay = isDay(revision) ? await this.lastOn(revision) : undefined;
    return onDay ?? { fault: "unknown revision", revision, since: this.since };
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
    return readBlobs(this.root, blobs);
  }

  private async lookUp(revision: string): Promise<Commit | undefined> {
    const answer = await this.run([
      "rev-parse",
      "--verify",
      "--quiet",
      "--end-of-options",
      `${revision}^{commit}`,
    ]);
    if (isGitFault(answer)) return undefined;
    return await this.describe(answer.out.toString("latin1").trim());
  }

  private async lastOn(day: string): Promise<Commit | undefined> {
    const answer = await this.run(["rev-list", "-1", `--until=${day}T23:59:59`, "HEAD"]);
    const id = isGitFault(answer) ? "" : answer.out.toString("latin1").trim();
    return id === "" ? undefined : await this.describe(id);
  }

  private async describe(id: string): Promise<Commit | undefined> {
    const answer = await this.run(["log", "-1", "--no-show-signature", `--format=${COMMIT_FORMAT}`, id]);
    return isGitFault(answer) ? undefined : commitOf(answer.out.toString("utf8").trimEnd().split("\0"));
  }

  private async run(words: readonly string[]): Promise<GitAnswer | GitFault> {
    const answer = await runGit(this.root, words);
    if (isGitFault(answer) || answer.status === 0) return answer;
    return { fault: "failed", message: answer.error };
  }
}

/** A path within a pattern. */
function literally(path: string): string {
  return path.replace(/[\\*?[\]]/g, "\\$&");
}

function openFault({ error }: GitAnswer, folder: string): GitFault {
  if (/dubious ownership/.test(error)) return { fault: "not yours", folder };
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
