/** What was measured, against what is allowed, each drawn small; the newest reading of each characteristic. */
import type { Build } from "../build/build.ts";
import { judgeReading, newestReadings } from "../build/judgement.ts";
import type { PartState, Reading } from "../build/states.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { formatQuantity, quantityOf } from "../quantities/quantity.ts";
import type { VerdictName } from "../quantities/verdict.ts";
import { sayLimits, worstOf } from "./parts.ts";
import { plotReading } from "./reading-plot.ts";
import type { Cell, Table, TableRow } from "./table.ts";
import { column, ESTIMATES_CAUTION } from "./table.ts";

const VERDICTS: Readonly<Record<VerdictName, Exclude<Cell, string>>> = {
  within: { text: "within", tone: "good" },
  near: { text: "near its limit", tone: "good" },
  uncertain: { text: "not proved either way", tone: "open" },
  outside: { text: "outside", tone: "bad" },
};

export function measurementsTable({ standing, today }: Build): Table {
  const measured = [...standing.parts.values()].filter(({ item }) => item.readings.length > 0);
  const assemblies = [...new Set(measured.map(assemblyOf))];
  return {
    title: `Measurements on ${today}`,
    columns: [
      column("part", "Part"),
      column("name", "What"),
      column("reading", "Reading", "right"),
      column("limits", "Allowed"),
      column("plot", "Drawn"),
      column("verdict", "Verdict"),
      column("date", "On"),
    ],
    sections: assemblies.map((assembly) => ({
      heading: assembly,
      rows: measured
        .filter((part) => assemblyOf(part) === assembly)
        .flatMap((part) =>
          newestReadings(part.item).map((reading, index) =>
            measurementRow(standing, part, reading, index === 0),
          ),
        ),
    })),
    notes: [
      "A verdict takes the uncertainty of the reading into account (ISO 14253-1). Drawn: the band is what is allowed, upright lines are its ends, the lozenge is the reading, and the line through it is its uncertainty.",
    ],
    cautions: [ESTIMATES_CAUTION],
  };
}

function assemblyOf({ node }: PartState): string {
  return node.path.split(".")[0] ?? node.path;
}

function measurementRow(
  standing: Build["standing"],
  { node }: PartState,
  reading: Reading,
  first: boolean,
): TableRow {
  const judged = worstOf(judgeReading(standing, reading));
  const value: Quantity = judged?.verdict.reading ?? reading.values[0];
  const uncertainty = judged?.verdict.uncertainty ?? reading.uncertainty;
  const spread = uncertainty === undefined ? "" : ` ± ${formatQuantity(rounded(uncertainty))}`;
  const cells = {
    part: first ? (node.title === undefined ? node.path : `${node.title} (${node.path})`) : "",
    name: nameOf(reading),
    reading: `${formatQuantity(value)}${spread}`,
    date: reading.fact.date,
  };
  if (judged === undefined) return { cells: { ...cells, verdict: { text: "no limit", tone: "faint" } } };
  const { limits } = judged.limit.record;
  const verdict = VERDICTS[judged.verdict.verdict];
  const said = `${formatQuantity(value)}, ${sayLimits(limits)}: ${verdict.text}`;
  return {
    cells: {
      ...cells,
      limits: sayLimits(limits),
      plot: { text: " ", drawing: plotReading(value, uncertainty, limits, said) },
      verdict,
    },
  };
}

/** Two figures of an uncertainty are enough (JCGM 100:2008, 7.2.6). */
function rounded({ value, unit }: Quantity): Quantity {
  return quantityOf(Number(value.toNumber().toPrecision(2)), unit);
}

/** The characteristic, where it was taken and under which setup. */
function nameOf({ name, setup, fact }: Reading): string {
  const { spot } = fact.fact;
  return [
    name.replaceAll("_", " "),
    ...(spot === undefined ? [] : [`at ${spot}`]),
    ...(setup === undefined ? [] : [`as ${setup.name}`]),
  ].join(", ");
}
