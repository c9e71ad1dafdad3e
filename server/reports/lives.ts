/** Lifed items: what ends when, what is used of what, what has to be serviced or changed, and what nobody knows. */
import type { Build } from "../build/build.ts";
import type { Interval } from "../build/intervals.ts";
import { fluidChangeOf, serviceOf } from "../build/intervals.ts";
import type { Life } from "../build/lives.ts";
import { isInUse, isOver, livesOf } from "../build/lives.ts";
import type { PlannedHold } from "../build/planned-holds.ts";
import { holdMissed, plannedHolds } from "../build/planned-holds.ts";
import type { Place } from "../build/source.ts";
import { lineOf } from "../build/source.ts";
import type { PartState } from "../build/states.ts";
import type { TreeNode } from "../build/tree/node.ts";
import type { IsoDate } from "../quantities/dates.ts";
import { daysBetween } from "../quantities/dates.ts";
import type { JsonQuantity } from "./json-values.ts";
import { jsonQuantity } from "./json-values.ts";
import type { Cell, Table, TableRow } from "./table.ts";
import { column } from "./table.ts";

export interface LivesReport {
  readonly schema: "cotter/lives/1";
  readonly today: string;
  readonly lives: readonly LifeReport[];
  readonly caution: string;
}

interface LifeReport {
  readonly ref: string;
  readonly title: string | null;
  /** What is counted: the date on its label, its age from when it was made or fitted, its running, services, its fluid. */
  readonly counted: "expires" | "made" | "fitted" | "running" | "service" | "fluid";
  /** How long it lasts; null where a date says so. */
  readonly life: JsonQuantity | null;
  readonly from: string | null;
  /** The last day on which it is good. */
  readonly ends: string | null;
  readonly daysLeft: number | null;
  readonly used: JsonQuantity | null;
  readonly left: JsonQuantity | null;
  readonly state: LifeState;
  /** The first planned hold point that it does not last for. */
  readonly missed: string | null;
  readonly file: string;
  readonly line: number;
}

type LifeState = "good" | "ends soon" | "over" | "unknown";

const CAUTION =
  "Dates are those of the log: the maker's label and the rules of the event decide, and an item of unknown age is taken as old.";

export function livesReport(build: Build): LivesReport {
  return {
    schema: "cotter/lives/1",
    today: build.today,
    lives: [...new Lives(build).all()].sort(byEnd),
    caution: CAUTION,
  };
}

/** What ends first comes first; what is unknown before what is counted in running. */
function byEnd(a: LifeReport, b: LifeReport): number {
  const [first, second] = [a, b].map(({ ends, state }) => ends ?? (state === "unknown" ? "9999" : "99999"));
  return first === second ? 0 : (first ?? "") < (second ?? "") ? -1 : 1;
}

class Lives {
  private readonly build: Build;
  private readonly planned: readonly PlannedHold[];

  constructor(build: Build) {
    this.build = build;
    this.planned = plannedHolds(build.standing);
  }

  *all(): Generator<LifeReport> {
    const { standing } = this.build;
    for (const part of standing.parts.values()) {
      if (!isInUse(standing, part)) continue;
      for (const life of livesOf(standing, part)) yield this.lifed(part, life);
      const service = serviceOf(standing, part);
      if (service !== undefined) yield this.repeated(part.node, "service", service);
    }
    for (const system of standing.systems.values()) {
      const change = fluidChangeOf(standing, system);
      if (change !== undefined && system.stage !== "open") yield this.repeated(system.node, "fluid", change);
    }
  }

  private lifed({ node }: PartState, life: Life): LifeReport {
    if (life.is === "unknown") {
      const { counted, duration } = life;
      return { ...this.of(node, counted, life.place), life: jsonQuantity(duration), state: "unknown" };
    }
    if (life.is === "running") {
      const { amount, used, left, known } = life;
      const over = isOver(life, this.build.today);
      return {
        ...this.of(node, "running", life.place),
        life: jsonQuantity(amount),
        used: jsonQuantity(used),
        left: jsonQuantity(left),
        state: over ? "over" : known ? "good" : "unknown",
      };
    }
    const { counted, duration, from, ends } = life;
    return {
      ...this.of(node, counted, life.place),
      life: jsonQuantity(duration),
      from: from ?? null,
      ...this.until(node, ends),
    };
  }

  private repeated(
    node: TreeNode,
    counted: "service" | "fluid",
    { every, record, from, done, due }: Interval,
  ): LifeReport {
    const until = due === undefined ? { state: "unknown" as const } : this.until(node, due);
    return {
      ...this.of(node, counted, done?.place ?? record),
      life: jsonQuantity(every),
      from: from ?? null,
      ...until,
    };
  }

  private until(node: TreeNode, ends: IsoDate): Pick<LifeReport, "ends" | "daysLeft" | "missed" | "state"> {
    const { standing, today } = this.build;
    const missed = holdMissed(standing, this.planned, node, ends)?.definition.name ?? null;
    const state = ends < today ? "over" : missed === null ? "good" : "ends soon";
    return { ends, daysLeft: daysBetween(today, ends), missed, state };
  }

  private of(node: TreeNode, counted: LifeReport["counted"], place: Place) {
    return {
      ref: node.path,
      title: node.title ?? null,
      counted,
      from: null,
      ends: null,
      daysLeft: null,
      used: null,
      left: null,
      missed: null,
      file: place.site.file.path,
      line: lineOf(place),
    };
  }
}

const STATES: Readonly<Record<LifeState, Cell>> = {
  good: { text: "good", tone: "good" },
  "ends soon": { text: "ends soon", tone: "open" },
  over: { text: "over", tone: "bad" },
  unknown: { text: "unknown", tone: "open" },
};

const COUNTED: Readonly<Record<LifeReport["counted"], string>> = {
  expires: "date on it",
  made: "from made",
  fitted: "from fitted",
  running: "running",
  service: "service",
  fluid: "fluid change",
};

export function livesTable(build: Build): Table {
  const { lives, today, caution } = livesReport(build);
  return {
    title: `Lifed items on ${today}`,
    columns: [
      column("what", "What"),
      column("counted", "Counted"),
      column("life", "Life", "right"),
      column("from", "From"),
      column("ends", "Ends"),
      column("left", "Left", "right"),
      column("state", "State"),
    ],
    sections: lives.length === 0 ? [] : [{ heading: "", rows: lives.map(lifeRow) }],
    notes:
      lives.length === 0 ? ["Nothing in the log has a life, a service interval or a change interval."] : [],
    cautions: [caution],
  };
}

function lifeRow({
  ref,
  title,
  counted,
  life,
  from,
  ends,
  daysLeft,
  left,
  state,
  missed,
}: LifeReport): TableRow {
  const days = daysLeft === null ? "" : `${daysLeft} d`;
  return {
    cells: {
      what: title === null ? ref : `${title} (${ref})`,
      counted: COUNTED[counted],
      life: life?.text ?? "",
      from: from ?? "",
      ends: ends ?? "",
      left: left?.text ?? days,
      state: STATES[state],
    },
    remarks: missed === null ? [] : [`does not last for ${missed}`],
  };
}
