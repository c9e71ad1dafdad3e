/** Running time, distance and runs, added up. */
import type { Decimal } from "../quantities/decimal.ts";
import { ZERO } from "../quantities/decimal.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { convert } from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import { unit } from "../quantities/unit.ts";
import type { DatedFact, Running } from "./states.ts";

export const NO_RUNNING: Running = { hours: ZERO, metres: ZERO, runs: ZERO };

export function addRunning(
  running: Running,
  { hours, distance, runs }: Pick<DatedFact<"ran">["fact"], "hours" | "distance" | "runs">,
): Running {
  return {
    hours: running.hours.plus(hours ?? 0),
    metres: running.metres.plus(distance === undefined ? ZERO : metresOf(distance)),
    runs: running.runs.plus(runs ?? 0),
  };
}

function metresOf(distance: Quantity): Decimal {
  const metres = convert(distance, unit("m"));
  return isFault(metres) ? ZERO : metres.value;
}
