/** What changed between two revisions, for people: what stands out first, then by assembly, diary, plan and complaints. */
import type { Build } from "../build/build.ts";
import { sayPlace } from "../reports/json-values.ts";
import type { Cell, Table, TableRow, TableSection } from "../reports/table.ts";
import { column } from "../reports/table.ts";
import type { Change, ChangeKind } from "./changes/change.ts";
import { CHANGE_KINDS } from "./changes/change.ts";
import type { Comparison, Side } from "./compare-revisions.ts";
import { sayShallow } from "./git-fault.ts";

export function changesTable({ from, to, after, changes, since }: Comparison): Table {
  const standOut = changes.filter(({ standsOut }) => standsOut);
  return {
    title: `What changed in ${after.standing.gathered.vehicle.title ?? "the build"} from ${saySide(from)} to ${saySide(to)}`,
    columns: [
      column("thing", "What"),
      column("change", "Change"),
      column("before", "Was"),
      column("after", "Is"),
    ],
    sections: [
      ...section("Look at these first", standOut),
      ...sectionsOf(
        after,
        changes.filter(({ standsOut }) => !standsOut),
      ),
    ],
    notes: notesOf(changes, after, since),
    cautions: [],
  };
}

function saySide({ revision, commit }: Side): string {
  if (commit === undefined) return "what is on disk";
  const named = commit.id.startsWith(revision ?? "") ? commit.short : `${revision} (${commit.short})`;
  return `${named} of ${commit.day}`;
}

function notesOf(changes: readonly Change[], { today }: Build, since: string | undefined): readonly string[] {
  const standOut = changes.filter(({ standsOut }) => standsOut).length;
  const count =
    changes.length === 0
      ? "Nothing has changed in the terms of the build."
      : `${changes.length} ${changes.length === 1 ? "change" : "changes"}, ${standOut === 0 ? "none" : standOut} of them to look at first.`;
  const shallow = sayShallow(since).replace(/^; this/, "This");
  return [
    count,
    `Both are looked at as of ${today}. Places marked "was" are those of the earlier revision.`,
    ...(shallow === "" ? [] : [`${shallow}.`]),
  ];
}

/** Assemblies in the order of definition, the rest behind them. */
function sectionsOf(after: Build, changes: readonly Change[]): readonly TableSection[] {
  const groups = new Map<string, Change[]>();
  for (const assembly of assembliesOf(after)) groups.set(assembly, []);
  for (const last of [...LAST, DIARY, PLAN, ORDER, COMPLAINTS]) groups.set(last, []);
  for (const change of changes) {
    const group = groupOf(after, change);
    const known = groups.get(group);
    if (known === undefined) groups.set(group, [change]);
    else known.push(change);
  }
  return [...groups].flatMap(([group, of]) => section(headingOf(after, group), of));
}

const DIARY = "The diary";
const PLAN = "The plan";
const ORDER = "To order";
const COMPLAINTS = "Complaints";
const LAST = ["The vehicle", "Names of their own"];

function assembliesOf({ standing }: Build): readonly string[] {
  return [...standing.gathered.tree.nodes()].flatMap(({ kind, path }) =>
    kind === "vehicle" ? [] : [topOf(path)],
  );
}

function topOf(path: string): string {
  return path.split(".")[0] ?? path;
}

function groupOf({ standing }: Build, { kind, what, ref }: Change): string {
  if (kind.startsWith("complaint")) return COMPLAINTS;
  if (kind.startsWith("order")) return ORDER;
  switch (what) {
    case "day":
      return DIARY;
    case "job":
    case "hold":
    case "build":
      return PLAN;
    case "vehicle":
      return "The vehicle";
    case "supplier":
    case "gauge":
    case "setup":
    case "donor":
      return "Names of their own";
    case "snag":
      return DIARY;
    case "test":
      return standing.gathered.tree.at(topOf(ref)) === undefined ? PLAN : topOf(ref);
    default:
      return topOf(ref);
  }
}

function headingOf({ standing }: Build, group: string): string {
  const title = standing.gathered.tree.at(group)?.title;
  return title === undefined ? group : `${title} (${group})`;
}

function section(heading: string, changes: readonly Change[]): readonly TableSection[] {
  return changes.length === 0 ? [] : [{ heading, rows: joinAlike(changes).map(rowOf) }];
}

/** What one line changes for several things, as in a copied branch, is one row. */
function joinAlike(changes: readonly Change[]): readonly (readonly Change[])[] {
  const rows = new Map<string, Change[]>();
  for (const [index, change] of changes.entries()) {
    const { kind, before, after, at } = change;
    const alone = change.what === "day" || at === undefined || kind.startsWith("complaint");
    const key = alone ? String(index) : JSON.stringify([kind, before, after, sayPlace(at.place)]);
    const row = rows.get(key);
    if (row === undefined) rows.set(key, [change]);
    else row.push(change);
  }
  return [...rows.values()];
}

function rowOf(alike: readonly Change[]): TableRow {
  const [first] = alike as readonly [Change, ...Change[]];
  const { kind, day, what, before, after, at } = first;
  const of = day === undefined || what === "day" ? "" : ` of ${day}`;
  const place = at === undefined ? "" : `${at.side === "before" ? "was in " : ""}${sayPlace(at.place)}`;
  const change = toned(first, `${CHANGE_KINDS[kind]}${of}`);
  const thing = alike.map(sayThing).join(", ");
  // A complaint is a sentence of its own, too long for a column.
  if (kind === "complaint-added" || kind === "complaint-gone")
    return { cells: { thing, change }, remarks: [`${after ?? before}: ${place}`] };
  return {
    cells: { thing, change, before: before ?? "", after: after ?? "" },
    // Said with its name, since not every form of a table keeps remarks below their row.
    remarks: place === "" || (GROWTH.has(kind) && !first.standsOut) ? [] : [`${first.ref}: ${place}`],
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
