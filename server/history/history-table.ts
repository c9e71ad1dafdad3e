/** The history of one thing, for people: what was said, by whom, and where it was written later than its day. */
import type { Cell, Table, TableRow } from "../reports/table.ts";
import { column } from "../reports/table.ts";
import { sayDaysLater } from "./days-later.ts";
import { sayShallow } from "./git-fault.ts";
import type { ThingHistory } from "./history-of-thing.ts";
import { fileOf, refOf, shownOf } from "./history-report.ts";
import type { Entry, PlacedStatement } from "./record/history.ts";

export function historyTable(history: ThingHistory): Table {
  const { subject, entries } = history;
  const named = subject.title === undefined ? refOf(history) : `${subject.title} (${refOf(history)})`;
  return {
    title: `What the log said of ${named}, as it was written`,
    columns: [
      column("written", "Written"),
      column("by", "By"),
      column("commit", "Commit"),
      column("day", "Tells of"),
      column("says", "What it says"),
      column("remark", "Remark"),
    ],
    sections: [{ heading: "", rows: entries.map((entry) => rowOf(history, entry)) }],
    notes: notesOf(history),
    cautions: [],
  };
}

function rowOf(history: ThingHistory, entry: Entry): TableRow {
  const { commit, before, after } = entry;
  const statement = shownOf(entry);
  const was = before !== undefined && after !== undefined ? [wasOf(entry)] : [];
  return {
    cells: {
      written: commit?.day ?? "not committed",
      by: commit?.author ?? "",
      commit: commit?.short ?? "",
      day: statement.day ?? "",
      says: { text: sayStatement(statement), ...(after === undefined ? FAINT : {}) },
      remark: remarkOf(entry),
    },
    remarks: isGrave(entry) ? [...was, placeOf(history, entry)] : was,
  };
}

/** Said with what stands there, since not every form of a table keeps remarks below their row. */
function placeOf(history: ThingHistory, entry: Entry): string {
  const statement = shownOf(entry);
  const side = entry.after === undefined ? "before" : "at";
  const at = entry.commit === undefined ? "" : ` ${side} ${entry.commit.short}`;
  return `${statement.word} of ${statement.day}: ${fileOf(history, statement)}:${statement.lineInFile}${at}`;
}

/** `cleaned`, or `measured thickness 9.12 mm`. */
export function sayStatement({ word, text }: PlacedStatement): string {
  return text === "" ? word : `${word} ${text}`;
}

const FAINT = { tone: "faint" } as const;

function wasOf({ before, after }: Entry): string {
  const day = before?.day !== after?.day ? ` of ${before?.day}` : "";
  return `was ${before === undefined ? "" : sayStatement(before)}${day}`;
}

/** Something that was recorded of a day was changed when that day was over. */
function isGrave({ is, daysLater }: Entry): boolean {
  return is !== "written" && daysLater !== undefined;
}

function remarkOf(entry: Entry): Cell {
  const { is, daysLater } = entry;
  const later = daysLater === undefined ? "" : sayDaysLater(daysLater);
  if (isGrave(entry)) return { text: `${is} ${later}`, tone: "bad" };
  if (is !== "written") return { text: is, tone: "open" };
  return later === "" ? "" : { text: `written ${later}`, tone: daysLater === 1 ? "faint" : "open" };
}

function notesOf(history: ThingHistory): readonly string[] {
  const { entries, commits, earlierNames, since } = history;
  const changed = entries.filter(isGrave).length;
  const shallow = sayShallow(since).replace(/^; this/, "This");
  return [
    `${count(entries.length, "entry", "entries")} in ${count(commits, "commit", "commits")} of the log; ${changed === 0 ? "none was" : `${changed} ${changed === 1 ? "was" : "were"}`} changed after the day it tells of.`,
    ...(earlierNames.length === 0 ? [] : [`Called ${earlierNames.join(", before that ")} before.`]),
    ...(shallow === "" ? [] : [`${shallow}.`]),
  ];
}

function count(figure: number, one: string, several: string): string {
  return `${figure} ${figure === 1 ? one : several}`;
}
