/** Running time, distance and runs, added up. */
import type { Decimal } from "../quantities/decimal.ts";
import { ZERO } from "../quantities/decimal.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { convert } from "../quantities/quantity.ts";
import { unlessFault } from "../quantities/quantity-fault.ts";
import { unit } from "../quantities/unit.ts";
import type { DatedFact, Running } from "./states.ts";

export const NO_RUNNING: Running = { hours: ZERO, metres: ZERO, runs: ZERO };

type Ran = Pick<DatedFact<"ran">["fact"], "hours" | "distance" | "runs">;

/** What each line adds: it is added to everything that ran. */
const remembered = new WeakMap<Ran, Running>();

export function addRunning(running: Running, ran: Ran): Running {
  const more = remembered.get(ran) ?? runningOf(ran);
  remembered.set(ran, more);
  return {
    hours: sum(running.hours, more.hours),
    metres: sum(running.metres, more.metres),
    runs: sum(running.runs, more.runs),
  };
}

function runningOf({ hours = ZERO, distance, runs = ZERO }: Ran): Running {
  return { hours, metres: distance === undefined ? ZERO : metresOf(distance), runs };
}

function sum(a: Decimal, b: Decimal): Decimal {
  return b.isZero() ? a : a.plus(b);
}

function metresOf(distance: Quantity): Decimal {
  return unlessFault(convert(distance, unit("m")))?.value ?? ZERO;
}
