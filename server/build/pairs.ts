/** Pairs: two measurements, side to side, that must agree. */
import type { Quantity } from "../quantities/quantity.ts";
import {
  absolute,
  asDifference,
  compare,
  convert,
  hasDimension,
  multiply,
  quantityOf,
  subtract,
} from "../quantities/quantity.ts";
import { isFault, unlessFault } from "../quantities/quantity-fault.ts";
import { NO_UNIT } from "../quantities/unit.ts";
import type { Verdict } from "../quantities/verdict.ts";
import { judge } from "../quantities/verdict.ts";
import { Calculator } from "./calculations.ts";
import type { Characteristic, QuantityCharacteristic } from "./characteristic.ts";
import { combinedUncertainty, isQuantity } from "./characteristic.ts";
import type { Standing } from "./standing.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";

/** A pair of which both sides were measured, set or calculated. */
export type JudgedPair = {
  readonly record: SourcedRecord<"pair">;
  readonly ours: Characteristic;
  readonly theirs: Characteristic;
  readonly otherNode: TreeNode;
  readonly otherName: string;
} & (
  | {
      readonly is: "judged";
      /** In the unit of the larger side. */
      readonly difference: Quantity;
      readonly allowed: Quantity;
      readonly verdict: Verdict;
    }
  /** A share of what has no zero of its own, or of values about zero. */
  | { readonly is: "share of no size"; readonly value: Quantity }
);

export function pairsOf(standing: Standing, node: TreeNode): readonly JudgedPair[] {
  return standing.definitions.all(node, "pair").flatMap((record) => {
    const judged = judgePair(standing, node, record);
    return judged === undefined ? [] : [judged];
  });
}

function judgePair(
  standing: Standing,
  node: TreeNode,
  record: SourcedRecord<"pair">,
): JudgedPair | undefined {
  const { node: otherNode, name: otherName } = standing.names.member(
    standing.definitions,
    record.record.other,
    record.turns,
  );
  if (otherNode === undefined) return undefined;
  const calculator = new Calculator(standing);
  const ours = calculator.characteristic(node, record.record.name);
  const theirs = calculator.characteristic(otherNode, otherName);
  if (!isTaken(ours) || !isTaken(theirs)) return undefined;
  // One side with a driver aboard and one without say nothing of each other.
  if (ours.setup !== theirs.setup) return undefined;
  const sides = { record, ours, theirs, otherNode, otherName };
  const larger = largerOf(ours.value, theirs.value);
  if (larger === undefined) return undefined;
  const allowed = allowedDifference(record.record.within, ours.value, theirs.value, larger);
  if (allowed === undefined) return { ...sides, is: "share of no size", value: larger };
  const difference = subtract(ours.value, theirs.value);
  const inUnit = isFault(difference) ? difference : convert(absolute(difference), larger.unit);
  if (isFault(inUnit)) return undefined;
  const verdict = unlessFault(judge([inUnit], combinedUncertainty(ours, theirs), { upper: allowed }, 0));
  return verdict && { ...sides, is: "judged", difference: inUnit, allowed, verdict };
}

/** Known from the thing itself, not from what it should be. */
function isTaken(known: Characteristic | undefined): known is QuantityCharacteristic {
  return isQuantity(known) && known.from !== "setting" && known.from !== "size";
}

function largerOf(one: Quantity, other: Quantity): Quantity | undefined {
  const order = compare(absolute(one), absolute(other));
  if (typeof order !== "number") return undefined;
  return order === -1 ? other : one;
}

/** What the two may differ by; undefined where a share of them means nothing. */
function allowedDifference(
  within: Quantity,
  one: Quantity,
  other: Quantity,
  larger: Quantity,
): Quantity | undefined {
  if (within.unit.symbol !== "%" || larger.unit.symbol === "%") return asDifference(within);
  const aboutZero = one.value.isNegative() !== other.value.isNegative() || larger.value.isZero();
  if (aboutZero || hasDimension(larger, "angle") || hasDimension(larger, "temperature")) return undefined;
  const share = unlessFault(convert(within, NO_UNIT));
  return unlessFault(share && multiply(absolute(larger), quantityOf(share.value)));
}
