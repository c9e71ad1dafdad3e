/** What git keeps of a build, for a view: commits, a comparison, and the history of one thing. */
import type { Change } from "../../../history/changes/change.ts";
import { groupChanges } from "../../../history/changes-groups.ts";
import { sayChange } from "../../../history/changes-table.ts";
import type { Commit } from "../../../history/commit.ts";
import type { Comparison, Side } from "../../../history/compare-revisions.ts";
import type { ThingHistory } from "../../../history/history-of-thing.ts";
import { refOf, shownOf } from "../../../history/history-report.ts";
import { sayStatement } from "../../../history/history-table.ts";
import type { Entry } from "../../../history/record/history.ts";
import type {
  BuildComparison,
  ChangeEntry,
  ComparedSide,
  RecordedCommit,
  RecordedSide,
  RecordedStatement,
  ThingRecord,
  TwoSided,
} from "../../protocol.ts";
import { rangeOf } from "../../to-protocol.ts";
import type { ChosenBuild } from "./chosen-build.ts";

export function recordedCommit({ id, short, day, author, subject }: Commit): RecordedCommit {
  return { id, short, day, author, subject };
}

export function comparedBuild(chosen: ChosenBuild, comparison: Comparison): BuildComparison {
  const { from, to } = comparison;
  const entryOf = (alike: readonly [Change, ...Change[]]): ChangeEntry => {
    const [first] = alike;
    return {
      thing: first.title ?? first.ref,
      refs: alike.map(({ ref }) => ref),
      change: sayChange(first),
      before: first.before ?? null,
      after: first.after ?? null,
      standsOut: first.standsOut,
      at: placeOf(chosen, comparison, first),
    };
  };
  return {
    from: comparedSide(from),
    to: comparedSide(to),
    groups: groupChanges(comparison).map(({ heading, rows }) => ({ heading, changes: rows.map(entryOf) })),
  };
}

function comparedSide({ commit, hasBuild }: Side): ComparedSide {
  return { commit: commit?.id ?? null, short: commit?.short ?? null, day: commit?.day ?? null, hasBuild };
}

function placeOf(chosen: ChosenBuild, { from, to, renames }: Comparison, { at }: Change): TwoSided | null {
  if (at === undefined) return null;
  const { place, side } = at;
  const file = place.site.file.path;
  const [left, right] =
    side === "before"
      ? [from.prefix + file, renames.atSecond(from.prefix + file)]
      : [renames.atFirst(to.prefix + file), to.prefix + file];
  return {
    left: sideAt(chosen, from, left),
    right: sideAt(chosen, to, right),
    side: side === "before" ? "left" : "right",
    line: rangeOf(place).start.line,
  };
}

/**
 * @param side without a commit it is the build in the editor
 * @param path from the root of the repository
 */
function sideAt(
  chosen: ChosenBuild,
  { commit, prefix }: { readonly commit: Commit | undefined; readonly prefix: string },
  path: string,
): RecordedSide {
  if (commit !== undefined) return { commit: commit.id, path, uri: null };
  const log = chosen.snapshot.logs.find(({ file }) => prefix + file.path === path);
  return { commit: null, path, uri: log === undefined ? null : chosen.uriOf(log.file) };
}

export function recordOfThing(chosen: ChosenBuild, history: ThingHistory): ThingRecord {
  const { subject, earlierNames, entries } = history;
  return {
    ref: refOf(history),
    title: subject.title ?? null,
    earlierNames,
    statements: entries.map((entry) => statementOf(chosen, history, entry)),
  };
}

function statementOf(chosen: ChosenBuild, history: ThingHistory, entry: Entry): RecordedStatement {
  const { commit, before, after } = entry;
  const shown = shownOf(entry);
  return {
    is: entry.is,
    says: sayStatement(shown),
    was: before !== undefined && after !== undefined ? sayStatement(before) : null,
    day: shown.day ?? null,
    daysLater: entry.daysLater ?? null,
    commit: commit === undefined ? null : recordedCommit(commit),
    at: {
      left: leftOf(history, entry),
      right: sideAt(chosen, { commit, prefix: history.prefix }, rightPath(entry)),
      side: after === undefined ? "left" : "right",
      line: shown.lineInFile - 1,
    },
  };
}

/** How the file was before: at the commit before it; of the first one empty. */
function leftOf({ head }: ThingHistory, entry: Entry): RecordedSide {
  const { commit, before, after } = entry;
  const moved = commit?.logs.find((log) => log.is === "renamed" && log.path === after?.path);
  const path = before?.path ?? (moved?.is === "renamed" ? moved.from : after?.path);
  return {
    commit: commit === undefined ? head.id : (commit.parents[0] ?? null),
    path: path ?? "",
    uri: null,
  };
}

function rightPath({ commit, before, after }: Entry): string {
  const moved = commit?.logs.find((log) => log.is === "renamed" && log.from === before?.path);
  return after?.path ?? moved?.path ?? before?.path ?? "";
}
