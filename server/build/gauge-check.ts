/** Whether a gauge could take the reading it is said to have taken. */
import type { Quantity } from "../quantities/quantity.ts";
import { formatQuantity } from "../quantities/quantity.ts";
import type { NamedDefinition } from "./definitions.ts";
import { gaugeReads, recordOf } from "./judgement.ts";
import type { Replay } from "./replay/replay.ts";
import type { Place } from "./source.ts";
import type { TreeNode } from "./tree/node.ts";

type Complaint = (replay: Replay, subject: TreeNode, place: Place) => void;

/** Why a gauge's reading is in doubt: out of its range, or used after its calibration ran out. */
export function gaugeDoubts(replay: Replay, gauge: NamedDefinition, value: Quantity): Complaint[] {
  return [...outOfRange(gauge, value), ...outOfDate(replay, gauge)];
}

function outOfRange(gauge: NamedDefinition, value: Quantity): Complaint[] {
  if (gaugeReads(gauge, value) !== false) return [];
  const ranges = recordOf(gauge, "reads")?.ranges ?? [];
  const range = ranges
    .map(({ lower, upper }) => [lower, upper].map((bound) => bound && formatQuantity(bound)).join(" to "))
    .join(", ");
  return [
    (replay, subject, place) =>
      replay.complainOf(
        subject,
        "gauge-out-of-range",
        place,
        { gauge: gauge.name, reading: value, range },
        { seeAlso: [{ place: gauge.header, role: "gauge" }] },
      ),
  ];
}

function outOfDate(replay: Replay, gauge: NamedDefinition): Complaint[] {
  const good = replay.gauges.get(gauge)?.calibrated?.until;
  if (good === undefined || replay.date <= good) return [];
  return [
    (_, subject, place) =>
      replay.complainOf(
        subject,
        "gauge-out-of-date",
        place,
        { gauge: gauge.name, good, used: replay.date },
        { seeAlso: [{ place: gauge.header, role: "gauge" }] },
      ),
  ];
}
