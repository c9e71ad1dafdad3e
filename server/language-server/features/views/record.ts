/** What git keeps of a build, for a view: commits, a comparison, and the history of one thing. */
import type { Change } from "../../../history/changes/change.ts";
import { groupChanges } from "../../../history/changes-groups.ts";
import { sayChange } from "../../../history/changes-table.ts";
import type { Commit } from "../../../history/commit.ts";
import type { Comparison, Side } from "../../../history/compare-revisions.ts";
import type { ThingHistory } from "../../../history/history-of-thing.ts";
import { fileOf, refOf, shownOf } from "../../../history/history-report.ts";
import type { Entry, PlacedStatement } from "../../../history/record/history.ts";
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

function comparedSide({ commit }: Side): ComparedSide {
  return { commit: commit?.id ?? null, short: commit?.short ?? null, day: commit?.day ?? null };
}

function placeOf(chosen: ChosenBuild, { from, to }: Comparison, { at }: Change): TwoSided | null {
  if (at === undefined) return null;
  const { place, side } = at;
  const file = place.site.file.path;
  return {
    left: sideAt(chosen, from.commit?.id, file),
    right: sideAt(chosen, to.commit?.id, file),
    side: side === "before" ? "left" : "right",
    line: rangeOf(place).start.line,
  };
}

/** @param commit undefined for the log in the editor */
function sideAt(chosen: ChosenBuild, commit: string | undefined, file: string): RecordedSide {
  if (commit !== undefined) return { commit, file, uri: null };
  const log = chosen.snapshot.logs.find((each) => each.file.path === file);
  return { commit: null, file, uri: log === undefined ? null : chosen.uriOf(log.file) };
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
      right: sideAt(chosen, commit?.id, fileOf(history, after ?? shown)),
      side: after === undefined ? "left" : "right",
      line: shown.lineInFile - 1,
    },
  };
}

/** How the file was before: at the commit before it; of the first one empty. */
function leftOf(history: ThingHistory, { commit, before, after }: Entry): RecordedSide {
  const statement = before ?? after;
  const file = statement === undefined ? "" : fileOf(history, statement);
  return { commit: commit === undefined ? "HEAD" : (commit.parents[0] ?? null), file, uri: null };
}

function sayStatement({ word, text }: PlacedStatement): string {
  return `${word} ${text}`;
}
