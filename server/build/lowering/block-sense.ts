/** What the records of one block say together, and cannot mean. */
import type { BlockNode, BlockWord, QuantityNode, RecordNode, ValueNode } from "../../../grammar/syntax.ts";
import type { Limits } from "../../quantities/limits.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import { asDifference, compare, formatQuantity, hasDimension } from "../../quantities/quantity.ts";
import { isFault } from "../../quantities/quantity-fault.ts";
import type { DefinitionRecord } from "./definition-record.ts";
import { WORKING_TIME } from "./due.ts";
import type { ValueLowering } from "./values.ts";

/** Complains of records that make no sense beside the others, and says which they are. */
export function complainOfSense(
  lowering: ValueLowering,
  block: BlockNode,
  word: BlockWord,
  records: readonly DefinitionRecord[],
): ReadonlySet<DefinitionRecord> {
  if (word === "job") return new Set(daysOfOwnWork(lowering, block, records));
  if (word === "gauge") return new Set(unlikeRanges(lowering, block, records));
  return new Set();
}

/** Calendar days are those of outside work: `takes: 28 d` needs `by:`. One that could not be read may be there. */
function daysOfOwnWork(
  lowering: ValueLowering,
  block: BlockNode,
  records: readonly DefinitionRecord[],
): readonly DefinitionRecord[] {
  const isOutside = block.items.some((item) => item.kind === "record" && item.word.text === "by");
  if (isOutside) return [];
  return records.filter((record) => {
    if (record.word !== "takes" || record.unit === "h") return false;
    const reason = "days are for outside work, which says by: SUPPLIER";
    lowering.complain("unreadable-value", valueNodeOf(block, record) ?? record.at, WORKING_TIME.expected, {
      reason,
    });
    return true;
  });
}

/** A gauge's resolution and uncertainty are in units of what it reads. */
function unlikeRanges(
  lowering: ValueLowering,
  block: BlockNode,
  records: readonly DefinitionRecord[],
): readonly DefinitionRecord[] {
  const ranges = records.flatMap((record) => (record.word === "reads" ? record.ranges : []));
  const [first] = ranges.flatMap(boundOf);
  if (first === undefined) return [];
  return records.filter((record) => {
    if (record.word !== "resolution" && record.word !== "uncertainty") return false;
    const { quantity } = record;
    if (hasDimension(quantity, "ratio") || ranges.flatMap(boundOf).some((bound) => isOf(quantity, bound)))
      return false;
    const expected = `a figure of what the gauge reads, as in ${formatQuantity(first)}`;
    lowering.complain("wrong-dimension", valueNodeOf(block, record) ?? record.at, expected);
    return true;
  });
}

function boundOf({ lower, upper, nominal }: Limits): Quantity[] {
  const bound = upper ?? lower ?? nominal;
  return bound === undefined ? [] : [bound];
}

function isOf(quantity: Quantity, bound: Quantity): boolean {
  return !isFault(compare(asDifference(quantity), asDifference(bound)));
}

/** Where the value of a record stands. */
function valueNodeOf(block: BlockNode, { at }: DefinitionRecord): ValueNode | QuantityNode | undefined {
  const node = block.items.find(
    (item): item is RecordNode => item.kind === "record" && item.word.start === at.start,
  );
  return node?.values.get("value");
}
