/** Readings of a thing against its limits, in lines with a small drawing each. */
import type { Build } from "../../build/build.ts";
import { readingsOf } from "../../build/characteristic.ts";
import { judgeReading, newestReadings } from "../../build/judgement.ts";
import type { Reading } from "../../build/states.ts";
import type { TreeNode } from "../../build/tree/node.ts";
import { formatQuantity } from "../../quantities/quantity.ts";
import type { Verdict } from "../../quantities/verdict.ts";
import { sayLimits } from "../../reports/parts.ts";
import { limitPlot } from "./limit-plot.ts";

/** One line and, where there is a limit, a drawing for each characteristic that was measured, or ought to be. */
export function measurementLines(build: Build, node: TreeNode, only?: string): readonly string[] {
  const { standing } = build;
  const all = readingsOf(standing, node);
  const newest = newestReadings({ readings: all }).filter(({ name }) => only === undefined || name === only);
  const measured = new Set(newest.map(({ name }) => name));
  const wanted = standing.definitions
    .all(node, "limit")
    .filter(({ record }) => (only === undefined || record.name === only) && !measured.has(record.name))
    .map(({ record }) => `${record.name}: not measured, ${sayLimits(record.limits)}`);
  return [...newest.flatMap((reading) => linesOf(build, reading, all)), ...wanted];
}

function linesOf({ standing }: Build, reading: Reading, all: readonly Reading[]): readonly string[] {
  const { name, fact, gauge, setup } = reading;
  const { spot } = fact.fact;
  const where = `${spot === undefined ? "" : ` at ${spot}`}${setup === undefined ? "" : ` for ${setup.name}`}`;
  const judged = judgeReading(standing, reading);
  const [value, doubt] = [judged[0]?.verdict.reading ?? reading.values[0], judged[0]?.verdict.uncertainty];
  const figure = `${formatQuantity(value)}${doubt === undefined ? "" : ` ± ${formatQuantity(doubt)}`}`;
  const by = gauge === undefined ? "" : ` with ${gauge.name}`;
  const head = `${name}${where} ${figure}, ${fact.date}${by}`;
  if (judged.length === 0) return [head];
  const history = all.filter((each) => each.name === name).flatMap(({ values }) => values);
  return judged.flatMap(({ limit, verdict }) => {
    const drawing = limitPlot([...history.filter((each) => each !== value), value], limit.record.limits);
    const words = `${head}: ${sayVerdict(verdict)} (${sayLimits(limit.record.limits)})`;
    return drawing === undefined ? [words] : [words, `  ${drawing}`];
  });
}

/** `within, 0.70 mm left`; `outside by 0.04 mm`; `uncertain`. */
export function sayVerdict({ verdict, margin, excess }: Verdict): string {
  if (verdict === "outside") return excess === undefined ? "outside" : `outside by ${formatQuantity(excess)}`;
  return verdict === "uncertain" ? "not proved either way" : `${verdict}, ${formatQuantity(margin)} left`;
}
