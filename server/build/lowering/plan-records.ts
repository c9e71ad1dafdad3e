/** The records of jobs, hold points and setups, and calculations, from syntax to values. */
import type { QuantityNode, WordNode } from "../../../grammar/syntax.ts";
import { HOLD_NEEDS } from "../../../grammar/vocabulary/words.ts";
import type { Decimal } from "../../quantities/decimal.ts";
import type { Unit } from "../../quantities/unit.ts";
import { isUnitFault, readUnit } from "../../quantities/unit.ts";
import { countedItems } from "./lists.ts";
import type { LowerTable } from "./record-forms.ts";
import { date, reference, references, text, whole } from "./record-forms.ts";
import { inDays, inHours } from "./times.ts";
import type { ValueLowering } from "./values.ts";

type Word = "on" | "takes" | "by" | "needs" | "start" | "covers" | "planned" | "stops" | "with" | "calc";

export const PLAN_RECORDS: LowerTable<Word> = {
  on: references,
  takes: (lowering, values) => {
    const node = values.get("value", "takes");
    if (node === undefined) return undefined;
    const last = node.values.at(-1)?.parts[0].unit;
    const calendar = last !== undefined && CALENDAR_UNIT.test(last.text);
    const borrowed = last && readUnit(last.text);
    const fallback = borrowed === undefined || isUnitFault(borrowed) ? undefined : borrowed;
    const [optimistic, likely = optimistic, pessimistic = optimistic] = timesOf(
      lowering,
      node.values,
      calendar ? inDays : inHours,
      fallback,
    );
    if (optimistic === undefined || likely === undefined || pessimistic === undefined) return undefined;
    if (optimistic.lessThanOrEqualTo(likely) && likely.lessThanOrEqualTo(pessimistic))
      return { unit: calendar ? "d" : "h", optimistic, likely, pessimistic };
    const expected = "an optimistic, a likely and a pessimistic time, each no shorter than the one before";
    return lowering.complain("unreadable-value", node, expected);
  },
  by: reference,
  needs: (lowering, values) => {
    const kinds = values.get("value", "words");
    if (kinds !== undefined)
      return { kinds: kinds.items.flatMap((item: WordNode) => lowering.oneOf(item, HOLD_NEEDS) ?? []) };
    return { items: countedItems(lowering, values.get("value", "countedReferences")) };
  },
  start: date,
  covers: references,
  planned: date,
  stops: (_, values) => {
    const node = values.get("value", "stops");
    return node && { jobs: node.jobs, ran: node.ran };
  },
  with: text,
  calc: (_, values) => {
    const name = values.text("name");
    const expression = values.get("expression", "expression");
    return whole({ name, expression });
  },
};

const CALENDAR_UNIT = /^(?:d|week|weeks)$/;

/** One time or three, the last first: it lends its unit to the others, so one slip in it is one complaint. */
function timesOf(
  lowering: ValueLowering,
  nodes: readonly QuantityNode[],
  read: typeof inHours,
  fallback: Unit | undefined,
): (Decimal | undefined)[] {
  const last = nodes.at(-1);
  const longest = last && read(lowering, last, undefined);
  if (longest === undefined) return [];
  return [...nodes.slice(0, -1).map((node) => read(lowering, node, fallback)), longest];
}
