/** When a joint is due to be checked again: by running since it was tightened, and since the last check. */
import type { Decimal } from "../quantities/decimal.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { compare, convert, hasDimension, quantityOf } from "../quantities/quantity.ts";
import { unlessFault } from "../quantities/quantity-fault.ts";
import { unit } from "../quantities/unit.ts";
import type { DayBlock, Gathered } from "./definitions.ts";
import type { DefinitionRecord } from "./lowering/definition-record.ts";
import { madeOnce } from "./remembered.ts";
import type { Standing } from "./standing.ts";
import type { JointState, Running } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";

export interface DueRecheck {
  /** Running since it was tightened, or since the last check. */
  readonly ran: Quantity;
  readonly due: Quantity;
  /** True where it has been checked before. */
  readonly again: boolean;
}

/**
 * The recheck that is due; undefined where none is. The first is `after` so much running since the tightening, and only
 * a check at or after that counts as it; the others come `every` so much. Of a joint as found only the others are known.
 */
export function dueRecheck(
  { definitions }: Pick<Standing, "definitions">,
  { node, tightened, rechecked, sinceTightened, sinceRechecked }: JointState,
): DueRecheck | undefined {
  const record = definitions.one(node, "recheck")?.record;
  if (record === undefined) return undefined;
  const { after, every } = record;
  if (after !== undefined && tightened !== undefined) {
    const atLastCheck = rechecked && less(sinceTightened, sinceRechecked);
    if (atLastCheck === undefined || !reaches(atLastCheck, after)) return due(sinceTightened, after, false);
  }
  return every && due(sinceRechecked, every, rechecked !== undefined);
}

/** Whether a joint asks for a recheck at any time of the log: the running of the others need not be counted. */
export function mayBeRechecked(
  { definitions, gathered }: Pick<Standing, "definitions" | "gathered">,
  joint: TreeNode,
): boolean {
  return asksForRechecks({ gathered }) || definitions.asWritten(joint, "recheck") !== undefined;
}

const asking = new WeakMap<Gathered, boolean>();

/** Whether any joint may ask for one, since rechecks are changed in the diary. */
export function asksForRechecks({ gathered }: Pick<Standing, "gathered">): boolean {
  return madeOnce(asking, gathered, () => gathered.dayLists.some(asksInDays));
}

const askingDays = new WeakMap<readonly DayBlock[], boolean>();

function asksInDays(days: readonly DayBlock[]): boolean {
  return madeOnce(askingDays, days, () => days.some(asksInDay));
}

function asksInDay({ changes, facts }: DayBlock): boolean {
  return changes && facts.some((fact) => fact.word === "changed" && asksForRecheck(fact.record));
}

function asksForRecheck(record: DefinitionRecord): boolean {
  return record.word === "recheck" || (record.word === "default" && record.record.word === "recheck");
}

function due(running: Running, amount: Quantity, again: boolean): DueRecheck | undefined {
  if (!reaches(running, amount)) return undefined;
  return { ran: inUnitOf(running, amount), due: amount, again };
}

function reaches(running: Running, amount: Quantity): boolean {
  const order = compare(inUnitOf(running, amount), amount);
  return order === 0 || order === 1;
}

/** The part of running that is counted like an amount: hours, distance or runs. */
function inUnitOf({ hours, metres, runs }: Running, amount: Quantity): Quantity {
  if (hasDimension(amount, "time")) return converted(hours, "h", amount);
  return hasDimension(amount, "length") ? converted(metres, "m", amount) : converted(runs, "run", amount);
}

function converted(value: Decimal, symbol: string, like: Quantity): Quantity {
  const quantity = quantityOf(value, unit(symbol));
  return unlessFault(convert(quantity, like.unit)) ?? quantity;
}

function less(a: Running, b: Running): Running {
  return {
    hours: a.hours.minus(b.hours),
    metres: a.metres.minus(b.metres),
    runs: a.runs.minus(b.runs),
  };
}
