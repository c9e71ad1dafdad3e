/** The parts schedule: where each part is, what was found and decided, what there is of it, its measurements against limits. */
import type { Build } from "../build/build.ts";
import { condemnation } from "../build/condemnation.ts";
import { judgeReading, newestReadings } from "../build/judgement.ts";
import { lineOf } from "../build/source.ts";
import type { PartState, Reading } from "../build/states.ts";
import type { PartNeed } from "../plan/needs.ts";
import type { Plan } from "../plan/plan.ts";
import type { Limits } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { formatQuantity } from "../quantities/quantity.ts";
import type { Verdict, VerdictName } from "../quantities/verdict.ts";
import type { JsonQuantity } from "./json-values.ts";
import { jsonQuantity, jsonUnit } from "./json-values.ts";
import type { Cell, Table, TableRow } from "./table.ts";
import { column, ESTIMATES_CAUTION } from "./table.ts";

export interface PartsReport {
  readonly schema: "cotter/parts/1";
  readonly today: string;
  readonly parts: readonly PartReport[];
  readonly caution: string;
}

interface PartReport {
  readonly ref: string;
  readonly title: string | null;
  readonly number: string | null;
  readonly count: number;
  readonly place: string;
  readonly decision: string | null;
  readonly decided: number | null;
  readonly settled: boolean;
  readonly condemned: string | null;
  readonly found: readonly string[];
  readonly item: number;
  readonly supply: {
    readonly needed: number;
    readonly onOrder: number;
    readonly inHand: number;
    readonly toOrder: number;
  };
  readonly measurements: readonly MeasurementReport[];
  readonly file: string | null;
  readonly line: number | null;
}

interface MeasurementReport {
  readonly name: string;
  /** The worst of the readings. */
  readonly value: number;
  readonly unit: string | null;
  readonly text: string;
  readonly readings: readonly JsonQuantity[];
  readonly uncertainty: JsonQuantity | null;
  readonly limits: {
    readonly lower: JsonQuantity | null;
    readonly upper: JsonQuantity | null;
    readonly text: string;
  } | null;
  /** `none` where no limit is stated. */
  readonly verdict: VerdictName | "none";
  readonly margin: JsonQuantity | null;
  readonly date: string;
  readonly gauge: string | null;
  readonly file: string;
  readonly line: number;
}

export function partsReport(build: Build, plan: Plan): PartsReport {
  const needs = new Map(plan.needs.map((need) => [need.node, need]));
  return {
    schema: "cotter/parts/1",
    today: build.today,
    parts: [...build.standing.parts.values()].map((part) => partReport(build, part, needs.get(part.node))),
    caution: ESTIMATES_CAUTION,
  };
}

function partReport({ standing }: Build, part: PartState, need: PartNeed | undefined): PartReport {
  const { node, place, item, decision } = part;
  return {
    ref: node.path,
    title: node.title ?? null,
    number: standing.definitions.one(node, "number")?.record.text ?? null,
    count: standing.definitions.one(node, "count")?.record.count ?? 1,
    place,
    decision: decision?.decision ?? null,
    decided: decision?.count ?? null,
    settled: decision?.settled !== undefined,
    condemned: condemnation(standing, part)?.why ?? null,
    found: conditionsOf(part),
    item: item.number,
    supply: {
      needed: need?.demand.needed ?? 0,
      onOrder: need?.onOrder ?? 0,
      inHand: standing.supply.get(node)?.inHand ?? 0,
      toOrder: need?.toOrder ?? 0,
    },
    measurements: newestReadings(item).map((reading) => measurementReport(standing, reading)),
    file: node.header?.site.file.path ?? null,
    line: node.header === undefined ? null : lineOf(node.header),
  };
}

function conditionsOf({ item }: PartState): string[] {
  return item.events.flatMap((event) => (event.is === "found" ? [event.condition] : []));
}

function measurementReport(standing: Build["standing"], reading: Reading): MeasurementReport {
  const judged = worstOf(judgeReading(standing, reading));
  const value = judged?.verdict.reading ?? reading.values[0];
  return {
    name: reading.name,
    value: value.value.toNumber(),
    unit: jsonUnit(value),
    text: formatQuantity(value),
    readings: reading.values.flatMap((each) => jsonQuantity(each) ?? []),
    uncertainty: jsonQuantity(reading.uncertainty),
    limits: judged === undefined ? null : jsonLimits(judged.limit.record.limits),
    verdict: judged?.verdict.verdict ?? "none",
    margin: jsonQuantity(judged?.verdict.margin),
    date: reading.fact.date,
    gauge: reading.gauge?.name ?? null,
    file: reading.fact.place.site.file.path,
    line: lineOf(reading.fact.place),
  };
}

const ORDER: readonly VerdictName[] = ["outside", "uncertain", "near", "within"];

/** Of several limits of one characteristic, the one that the reading stands worst against. */
export function worstOf<T extends { readonly verdict: Verdict }>(judged: readonly T[]): T | undefined {
  return [...judged].sort((a, b) => ORDER.indexOf(a.verdict.verdict) - ORDER.indexOf(b.verdict.verdict))[0];
}

function jsonLimits(limits: Limits): MeasurementReport["limits"] {
  return { lower: jsonQuantity(limits.lower), upper: jsonQuantity(limits.upper), text: sayLimits(limits) };
}

/** `min 8.4 mm`, `max 0.10 mm`, `54.00 mm to 54.05 mm`. */
export function sayLimits({ lower, upper, nominal }: Limits): string {
  const say = (bound: Quantity) => formatQuantity(bound);
  if (lower !== undefined && upper !== undefined) return `${say(lower)} to ${say(upper)}`;
  if (lower !== undefined) return `min ${say(lower)}`;
  if (upper !== undefined) return `max ${say(upper)}`;
  return nominal === undefined ? "" : say(nominal);
}

const PLACES: Readonly<Record<PartState["place"], Cell>> = {
  on: { text: "on", tone: "good" },
  trial: { text: "on for trial", tone: "open" },
  off: { text: "off", tone: "open" },
  away: { text: "away", tone: "open" },
  shelf: { text: "shelf", tone: "faint" },
  gone: { text: "gone", tone: "faint" },
};

export function partsTable(build: Build, plan: Plan): Table {
  const { parts } = partsReport(build, plan);
  const assemblies = [...new Set(parts.map(({ ref }) => ref.split(".")[0] ?? ref))];
  return {
    title: `Parts schedule of ${build.standing.gathered.vehicle.title ?? "the vehicle"} on ${build.today}`,
    columns: [
      column("part", "Part"),
      column("place", "Where"),
      column("decision", "Decision"),
      column("supply", "Goods"),
      column("number", "Number"),
    ],
    sections: assemblies.map((assembly) => ({
      heading: assembly,
      rows: parts.filter(({ ref }) => (ref.split(".")[0] ?? ref) === assembly).map(partRow),
    })),
    notes: [
      "A verdict takes the uncertainty of the reading into account (ISO 14253-1): within, near, uncertain or outside.",
    ],
    cautions: [ESTIMATES_CAUTION],
  };
}

function partRow({
  ref,
  title,
  number,
  place,
  decision,
  settled,
  condemned,
  supply,
  measurements,
}: PartReport): TableRow {
  const goods = [
    supply.inHand > 0 ? `${supply.inHand} in hand` : "",
    supply.onOrder > 0 ? `${supply.onOrder} on order` : "",
    supply.toOrder > 0 ? `${supply.toOrder} to order` : "",
  ].filter((text) => text !== "");
  const decided = decision === null ? "" : settled ? `${decision}, done` : decision;
  return {
    cells: {
      part: title === null ? ref : `${title} (${ref})`,
      place: PLACES[place as PartState["place"]],
      decision:
        condemned === null
          ? decided
          : { text: `${decided === "" ? "" : `${decided}: `}condemned, ${condemned}`, tone: "bad" },
      supply: goods.join(", "),
      number: number ?? "",
    },
    remarks: measurements.map(sayMeasurement),
  };
}

function sayMeasurement({ name, text, limits, verdict, date, margin }: MeasurementReport): string {
  const judged =
    verdict === "none"
      ? "no limit"
      : `${verdict}${verdict === "outside" || margin === null ? "" : `, ${margin.text} left`}`;
  return `${name} ${text}${limits === null ? "" : ` (${limits.text})`}: ${judged}, ${date}`;
}
