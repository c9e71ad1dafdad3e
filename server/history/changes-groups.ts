/** The changes of a comparison as one reads them: what stands out first, then by assembly, diary, plan and complaints. */
import type { Build } from "../build/build.ts";
import { sayPlace } from "../reports/json-values.ts";
import type { Change } from "./changes/change.ts";
import type { Comparison } from "./compare-revisions.ts";

export interface ChangesGroup {
  readonly heading: string;
  /** What one line changes for several things, as in a copied branch, stands together. */
  readonly rows: readonly (readonly [Change, ...Change[]])[];
}

export function groupChanges({
  before,
  after,
  changes,
}: Pick<Comparison, "before" | "after" | "changes">): readonly ChangesGroup[] {
  return [
    ...groupOfRows(
      "Look at these first",
      changes.filter(({ standsOut }) => standsOut),
    ),
    ...groupsIn(
      [after, before],
      changes.filter(({ standsOut }) => !standsOut),
    ),
  ];
}

/** Assemblies in the order of definition, those that are gone behind them, then the rest. */
function groupsIn(
  [after, before]: readonly [Build, Build],
  changes: readonly Change[],
): readonly ChangesGroup[] {
  const groups = new Map<string, Change[]>();
  for (const assembly of [...assembliesOf(after), ...assembliesOf(before)]) groups.set(assembly, []);
  for (const last of [...LAST, DIARY, PLAN, ORDER, COMPLAINTS]) groups.set(last, []);
  for (const change of changes) {
    const group = groupOf(after, change);
    const known = groups.get(group);
    if (known === undefined) groups.set(group, [change]);
    else known.push(change);
  }
  return [...groups].flatMap(([group, of]) => groupOfRows(headingOf([after, before], group), of));
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

function headingOf(builds: readonly Build[], group: string): string {
  const [title] = builds.flatMap(({ standing }) => standing.gathered.tree.at(group)?.title ?? []);
  return title === undefined ? group : `${title} (${group})`;
}

function groupOfRows(heading: string, changes: readonly Change[]): readonly ChangesGroup[] {
  return changes.length === 0 ? [] : [{ heading, rows: joinAlike(changes) }];
}

/** What one line changes for several things, as in a copied branch, is one row. */
function joinAlike(changes: readonly Change[]): ChangesGroup["rows"] {
  const rows = new Map<string, [Change, ...Change[]]>();
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
