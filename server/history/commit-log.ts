/** Commits with what each did to the logs, from what `git log --raw -z` prints. */
import type { CommitWithLogs, LogChange } from "./commit.ts";
import { COMMIT_FIELDS, COMMIT_FORMAT, commitOf } from "./commit.ts";

/**
 * What `git log` is asked for: parents before children; of a merge what it changed against its first parent; parents
 * are those among the commits that touched a log.
 * @param mark begins each commit; no name or message may hold it
 */
export function logWords(mark: string): readonly string[] {
  return [
    "log",
    "--date-order",
    "--reverse",
    "--full-history",
    "--parents",
    "--raw",
    "--no-abbrev",
    "--no-ext-diff",
    "--no-textconv",
    "--no-color",
    "--no-show-signature",
    "--find-renames",
    "--diff-merges=first-parent",
    "-z",
    `--format=${mark}%x00${COMMIT_FORMAT}%x00`,
  ];
}

export function parseLog(out: string, mark: string): readonly CommitWithLogs[] {
  return out.split(`${mark}\0`).slice(1).map(parseCommit);
}

function parseCommit(text: string): CommitWithLogs {
  const words = text.split("\0");
  return { ...commitOf(words.slice(0, COMMIT_FIELDS)), logs: parseChanges(words.slice(COMMIT_FIELDS)) };
}

/** `:100644 100644 OLD NEW M`, then the path, or two of a rename or copy. */
const RAW = /:\d{6} (\d{6}) [0-9a-f]+ ([0-9a-f]+) ([A-Z])\d*$/;
const FILE_MODE = /^100/;

function parseChanges(words: readonly string[]): LogChange[] {
  const changes: LogChange[] = [];
  for (let at = 0; at < words.length; at++) {
    const [, mode = "", blob = "", letter = ""] = RAW.exec(words[at] ?? "") ?? [];
    if (letter === "") continue;
    const first = words[++at] ?? "";
    if (letter === "R" || letter === "C") {
      const second = words[++at] ?? "";
      changes.push(
        letter === "R"
          ? { is: "renamed", path: second, blob, from: first }
          : { is: "written", path: second, blob },
      );
    } else if (letter === "D" || !FILE_MODE.test(mode)) changes.push({ is: "removed", path: first });
    else changes.push({ is: "written", path: first, blob });
  }
  return changes;
}
