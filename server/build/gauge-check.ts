/** Whether a gauge could give the reading that it is said to have given. */
import type { Limits } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { formatQuantity } from "../quantities/quantity.ts";
import type { NamedDefinition } from "./definitions.ts";
import { gaugeReads, rangesOf } from "./judgement.ts";
import type { Standing } from "./standing.ts";
import type { GaugeDoubt } from "./states.ts";

/** What speaks against a gauge on the day of a standing: out of its range, or used after its calibration ran out. */
export function gaugeDoubts(
  { gauges, date }: Pick<Standing, "gauges" | "date">,
  gauge: NamedDefinition,
  value: Quantity,
): readonly GaugeDoubt[] {
  const doubts: GaugeDoubt[] = [];
  if (gaugeReads(gauge, value) === false)
    doubts.push({ is: "out of range", gauge, reading: value, range: inWords(rangesOf(gauge)) });
  const good = gauges.get(gauge)?.calibrated?.until;
  if (good !== undefined && date > good) doubts.push({ is: "out of date", gauge, good });
  return doubts;
}

function inWords(ranges: readonly Limits[]): string {
  return ranges
    .map(({ lower, upper }) =>
      [lower, upper].flatMap((bound) => (bound ? [formatQuantity(bound)] : [])).join(" to "),
    )
    .join(", ");
}
