/** Commits as the history reads them. */

export interface Commit {
  readonly id: string;
  /** The first characters of the id. */
  readonly short: string;
  readonly parents: readonly string[];
  readonly author: string;
  /** The day on which it was written, by the author's own clock. */
  readonly day: string;
  /** The first line of its message. */
  readonly subject: string;
}

/** A commit with what it did to the logs, against its first parent. */
export interface CommitWithLogs extends Commit {
  readonly logs: readonly LogChange[];
}

/** `blob` is the content behind the change; `is: "renamed"` comes from another path. */
export type LogChange =
  | { readonly is: "written"; readonly path: string; readonly blob: string }
  | { readonly is: "renamed"; readonly path: string; readonly blob: string; readonly from: string }
  | { readonly is: "removed"; readonly path: string };

/** Fields that a NUL ends each; `%H %P %an %aI %s`. */
export const COMMIT_FORMAT = "%H%x00%P%x00%an%x00%aI%x00%s";
export const COMMIT_FIELDS = 5;

/** Enough to tell the commits of any log apart. */
const SHORT = 9;

export function commitOf(fields: readonly string[]): Commit {
  const [id = "", parents = "", author = "", date = "", subject = ""] = fields;
  return {
    id,
    short: id.slice(0, SHORT),
    parents: parents === "" ? [] : parents.split(" "),
    author,
    day: date.slice(0, 10),
    subject,
  };
}
