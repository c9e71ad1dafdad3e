/** What changed between two revisions, for people: what stands out first, then by assembly, diary, plan and complaints. */
import type { Build } from "../build/build.ts";
import { sayPlace } from "../reports/json-values.ts";
import type { Cell, Table, TableRow } from "../reports/table.ts";
import { column } from "../reports/table.ts";
import type { Change, ChangeKind } from "./changes/change.ts";
import { CHANGE_KINDS } from "./changes/change.ts";
import type { ChangesGroup } from "./changes-groups.ts";
import { groupChanges } from "./changes-groups.ts";
import type { Comparison, Side } from "./compare-revisions.ts";
import { sayShallow } from "./git-fault.ts";
import { isDay } from "./revision.ts";

export function changesTable(comparison: Comparison): Table {
  const { from, to, before, after } = comparison;
  const vehicle = titleOf(after) ?? titleOf(before) ?? "the build";
  return {
    title: `What changed in ${vehicle} from ${saySide(from)} to ${saySide(to)}`,
    columns: [
      column("thing", "What"),
      column("change", "Change"),
      column("before", "Was"),
      column("after", "Is"),
    ],
    sections: groupChanges(comparison).map(({ heading, rows }) => ({ heading, rows: rows.map(rowOf) })),
    notes: notesOf(comparison),
    cautions: [],
  };
}

/** Of a day the commit is said that was the last by its end, which can be an older one. */
function saySide({ revision = "", commit }: Side): string {
  if (commit === undefined) return "what is on disk";
  const { id, short, day } = commit;
  if (id.startsWith(revision)) return `${short} of ${day}`;
  if (revision === day) return `${day} (${short})`;
  return isDay(revision)
    ? `${revision} (${short} of ${day}, the last by then)`
    : `${revision} (${short}) of ${day}`;
}

function titleOf({ standing }: Build): string | undefined {
  return standing.gathered.vehicle.title;
}

function notesOf({ from, to, after: { today }, changes, since }: Comparison): readonly string[] {
  const standOut = changes.filter(({ standsOut }) => standsOut).length;
  const count =
    changes.length === 0
      ? "Nothing has changed in the terms of the build."
      : `${changes.length} ${changes.length === 1 ? "change" : "changes"}, ${standOut === 0 ? "none" : standOut} of them to look at first.`;
  const shallow = sayShallow(since).replace(/^; this/, "This");
  return [
    ...(from.hasBuild ? [] : [`There was nothing of this build at ${saySide(from)}: all of it is new.`]),
    ...(to.hasBuild ? [] : [`There is nothing of this build at ${saySide(to)}: all of it is gone.`]),
    count,
    `Both are looked at as of ${today}. Places marked "was" are those of the earlier revision.`,
    ...(shallow === "" ? [] : [`${shallow}.`]),
  ];
}

function rowOf(alike: ChangesGroup["rows"][number]): TableRow {
  const [first] = alike;
  const { kind, before, after, at } = first;
  const place = at === undefined ? "" : `${at.side === "before" ? "was in " : ""}${sayPlace(at.place)}`;
  const change = toned(first, sayChange(first));
  const thing = alike.map(sayThing).join(", ");
  // A complaint is a sentence of its own, too long for a column.
  if (kind === "complaint-added" || kind === "complaint-gone")
    return { cells: { thing, change }, remarks: [`${after ?? before}: ${place}`] };
  return {
    cells: { thing, change, before: before ?? "", after: after ?? "" },
    // Said with its name, since not every form of a table keeps remarks below their row.
    remarks:
      place === "" || (GROWTH.has(kind) && !first.standsOut)
        ? []
        : [`${first.ref}, ${sayKind(first)}: ${place}`],
  };
}

/** What comes of going on with the diary: its lines are where one would look, and are many. */
const GROWTH: ReadonlySet<ChangeKind> = new Set<ChangeKind>([
  "reading-added",
  "day-added",
  "state-changed",
  "order-added",
  "order-removed",
  "order-changed",
  "hold-moved",
]);

/** `reading of 2026-05-02 altered after the fact`. */
export function sayChange(change: Change): string {
  const { kind, day, what } = change;
  const said = sayKind(change);
  if (day === undefined || what === "day") return said;
  if (kind === "fact-added") return `${said}, ${day}`;
  return said.startsWith("reading") ? said.replace("reading", `reading of ${day}`) : `${said}, of ${day}`;
}

/** Of a definition it is said whether a record came, went or is another. */
function sayKind({ kind, before, after }: Change): string {
  if (kind !== "definition-changed" || (before !== undefined && after !== undefined))
    return CHANGE_KINDS[kind];
  return before === undefined ? "added to its definition" : "taken out of its definition";
}

function sayThing({ ref, title, what }: Change): string {
  if (what === "build" || what === "order" || title === undefined) return ref;
  return `${title} (${ref})`;
}

const GOOD: ReadonlySet<ChangeKind> = new Set<ChangeKind>(["limit-tightened", "complaint-gone"]);

function toned({ kind, standsOut }: Change, text: string): Cell {
  if (standsOut) return { text, tone: "bad" };
  if (GOOD.has(kind)) return { text, tone: "good" };
  return kind === "complaint-added" ? { text, tone: "open" } : text;
}
