/** What is still open before each hold point; of a build without hold points, for the vehicle as a whole. */
import type { Build } from "../build/build.ts";
import type { NamedDefinition } from "../build/definitions.ts";
import { isShut } from "../build/hold-order.ts";
import { recordOf } from "../build/judgement.ts";
import type { OpenItem } from "../build/open-item.ts";
import { sayOpenItem } from "../build/open-item.ts";
import { openItems } from "../build/openness.ts";
import { lineOf, placeAt } from "../build/source.ts";
import type { Waived } from "../rules/complaint.ts";
import { inspectionDecides } from "./inspection-decides.ts";
import type { Cell, Table, TableRow, TableSection } from "./table.ts";
import { column } from "./table.ts";

export interface OutstandingReport {
  readonly schema: "cotter/outstanding/1";
  readonly today: string;
  readonly holds: readonly OutstandingHold[];
  /** Complaints that a line of the log sets aside, with its reason. */
  readonly waived: readonly {
    readonly code: string;
    readonly message: string;
    readonly reason: string;
    readonly file: string;
    readonly line: number;
  }[];
  readonly caution: string;
}

interface OutstandingHold {
  /** `vehicle` where the build has no hold point. */
  readonly ref: string;
  readonly title: string | null;
  readonly planned: string | null;
  /** Nothing is open: it can be released. */
  readonly ready: boolean;
  /** The day of the release that stands. */
  readonly released: string | null;
  /** Since when a release stands no more. */
  readonly lapsed: string | null;
  readonly open: readonly {
    readonly code: string;
    /** Empty where it is no one thing: a line that could not be read. */
    readonly ref: string;
    readonly message: string;
    readonly file: string;
    readonly line: number;
  }[];
}

/** @param hold the only hold point that is asked about; undefined: all of them */
export function outstandingReport(
  build: Build,
  waived: readonly Waived[],
  hold?: NamedDefinition,
): OutstandingReport {
  const holds = inspectedHolds(build, hold).map(holdReport);
  return {
    schema: "cotter/outstanding/1",
    today: build.today,
    holds,
    waived: waived.map(({ complaint: { code, message, place }, reason }) => ({
      code,
      message,
      reason,
      file: place.site.file.path,
      line: lineOf(place),
    })),
    caution: inspectionDecides(distinct(holds.flatMap(({ open }) => open.map(keyOf)))),
  };
}

/** A hold point with what is open before it. */
export interface InspectedHold {
  readonly hold: NamedDefinition;
  readonly released: string | undefined;
  readonly lapsed: string | undefined;
  readonly open: readonly OpenItem[];
}

/** Every hold point, or the one asked about; the vehicle as a whole where the build has none. */
export function inspectedHolds({ standing, sites }: Build, only?: NamedDefinition): readonly InspectedHold[] {
  const [first] = sites;
  if (standing.holds.size === 0 && first !== undefined) {
    const header = standing.gathered.vehicle.header ?? placeAt(first, { start: 0, end: 0 });
    const whole: NamedDefinition = {
      name: "vehicle",
      kind: "hold",
      title: standing.gathered.vehicle.title,
      header,
      records: [],
      order: 0,
      lost: [],
    };
    return [{ hold: whole, released: undefined, lapsed: undefined, open: openItems(standing, whole) }];
  }
  return [...standing.holds.values()]
    .filter(({ definition }) => only === undefined || definition === only)
    .map((state) => ({
      hold: state.definition,
      released: isShut(state) ? undefined : state.released?.date,
      lapsed: state.lapsed?.date,
      open: openItems(standing, state.definition),
    }));
}

export function holdReport({ hold, released, lapsed, open }: InspectedHold): OutstandingHold {
  return {
    ref: hold.name,
    title: hold.title ?? null,
    planned: recordOf(hold, "planned")?.date ?? null,
    ready: open.length === 0,
    released: released ?? null,
    lapsed: lapsed ?? null,
    open: open.map((item) => ({
      code: item.code,
      ref: item.ref,
      message: sayOpenItem(item),
      file: item.place.site.file.path,
      line: lineOf(item.place),
    })),
  };
}

/** One thing may be open for several hold points. */
function keyOf({ code, ref, message, file, line }: OutstandingHold["open"][number]): string {
  return [code, ref, message, file, line].join(" ");
}

function distinct(keys: readonly string[]): number {
  return new Set(keys).size;
}

export function outstandingTable(build: Build, waived: readonly Waived[], hold?: NamedDefinition): Table {
  const report = outstandingReport(build, waived, hold);
  return {
    title: `Outstanding on ${build.today}`,
    columns: [column("ref", "What"), column("message", "Open because"), column("line", "In the log")],
    sections: build.standing.holds.size === 0 ? report.holds.map(wholeOf) : report.holds.map(sectionOf),
    notes: [
      ...(build.standing.holds.size === 0 ? [NO_HOLD_POINT] : []),
      ...report.waived.map(
        ({ code, message, reason, file, line }) =>
          `waived at ${file}:${line}: ${code}: ${message} (${reason === "" ? "no reason given" : reason})`,
      ),
    ],
    cautions: [report.caution],
  };
}

const NO_HOLD_POINT =
  "The log has no hold point, so this is the vehicle as a whole. A block that begins with hold says how far work may go, and what has to be in order before it.";

function sectionOf(hold: OutstandingHold): TableSection {
  const { ref, title, planned } = hold;
  const named = title === null ? ref : `${title} (${ref})`;
  return inspected(
    `${named}${planned === null ? "" : `, planned for ${planned}`}: ${sayHoldState(hold)}`,
    hold,
  );
}

/** Of a log without a hold point: nothing is shut, and nothing can be released. */
function wholeOf(whole: OutstandingHold): TableSection {
  const { title, open } = whole;
  return inspected(
    `${title ?? "The vehicle"}, as a whole${open.length === 0 ? "" : `: ${open.length} open`}`,
    whole,
  );
}

function inspected(heading: string, { open }: OutstandingHold): TableSection {
  return { heading, rows: open.map(rowOf), foot: open.length === 0 ? ["nothing open"] : [] };
}

/** `shut, 3 open`; `released on 2026-10-08`. */
function sayHoldState({ ready, released, lapsed, open }: OutstandingHold): string {
  const count = `${open.length} open`;
  if (released !== null) return ready ? `released on ${released}` : `released on ${released}, ${count} since`;
  if (lapsed !== null) return `release lapsed on ${lapsed}, ${ready ? "ready to be released again" : count}`;
  return ready ? "ready to be released" : `shut, ${count}`;
}

function rowOf({ ref, message, file, line }: OutstandingHold["open"][number]): TableRow {
  const what: Cell = { text: ref === "" ? "the log" : ref, box: true };
  return { cells: { ref: what, message, line: `${file}:${line}` } };
}
