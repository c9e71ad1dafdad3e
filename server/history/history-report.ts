/** The history of one thing, as a report object. */
import type { ThingHistory } from "./history-of-thing.ts";
import type { Entry, EntryKind, PlacedStatement } from "./record/history.ts";

export interface HistoryReport {
  readonly schema: "cotter/history/1";
  readonly ref: string;
  /** Null of what is in the build no longer. */
  readonly what: string | null;
  readonly title: string | null;
  readonly earlierNames: readonly string[];
  readonly commits: number;
  readonly entries: readonly {
    readonly kind: EntryKind;
    /** All null of what has not been committed. */
    readonly commit: string | null;
    readonly written: string | null;
    readonly author: string | null;
    readonly subject: string | null;
    /** The day that it tells of; null of a definition. */
    readonly day: string | null;
    readonly word: string;
    readonly before: string | null;
    readonly after: string | null;
    /** Days from the day that it tells of to the one on which it was written; null where it is the same, or a definition. */
    readonly daysLater: number | null;
    readonly file: string;
    readonly line: number;
  }[];
  /** In a shallow clone, the day of its oldest commit. */
  readonly shallowSince: string | null;
}

export function historyReport(history: ThingHistory): HistoryReport {
  const { subject, earlierNames, entries, commits, since } = history;
  return {
    schema: "cotter/history/1",
    ref: refOf(history),
    what: subject.what ?? null,
    title: subject.title ?? null,
    earlierNames,
    commits,
    entries: entries.map((entry) => reportEntry(history, entry)),
    shallowSince: since ?? null,
  };
}

export function refOf({ subject: { ref, characteristic } }: ThingHistory): string {
  return characteristic === undefined ? ref : `${ref}.${characteristic}`;
}

function reportEntry(history: ThingHistory, entry: Entry): HistoryReport["entries"][number] {
  const { commit, before, after } = entry;
  const statement = shownOf(entry);
  return {
    kind: entry.is,
    commit: commit?.id ?? null,
    written: commit?.day ?? null,
    author: commit?.author ?? null,
    subject: commit?.subject ?? null,
    day: statement.day ?? null,
    word: statement.word,
    before: before?.text ?? null,
    after: after?.text ?? null,
    daysLater: entry.daysLater ?? null,
    file: fileOf(history, statement),
    line: statement.lineInFile,
  };
}

/** What it says now; of what was taken out, what it said. */
export function shownOf({ before, after }: Entry): PlacedStatement {
  const statement = after ?? before;
  if (statement === undefined) throw new Error("an entry of a history is about a statement");
  return statement;
}

/** Relative to the build's folder; of a file that was elsewhere then, from the root of the repository. */
export function fileOf({ prefix }: ThingHistory, { path }: PlacedStatement): string {
  return path.startsWith(prefix) ? path.slice(prefix.length) : path;
}
