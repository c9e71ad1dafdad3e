/** Lists of counted things, and of figures that share a unit. */
import type { CountedReferencesNode, QuantityNode, UnitNode } from "../../../grammar/syntax.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import { compare } from "../../quantities/quantity.ts";
import { isFault } from "../../quantities/quantity-fault.ts";
import type { Unit } from "../../quantities/unit.ts";
import { isUnitFault, readUnit } from "../../quantities/unit.ts";
import { asKept } from "../list-under.ts";
import type { Counted } from "./definition-record.ts";
import type { Due } from "./due.ts";
import { ANY } from "./due.ts";
import { refuseUnlike } from "./limits.ts";
import type { ValueLowering } from "./values.ts";
import { isBare } from "./values.ts";

/** `N x REF` items; one whose number makes no sense is left out with its complaint. */
export function countedItems(
  lowering: ValueLowering,
  node: CountedReferencesNode | undefined,
  least = 1,
): readonly Counted[] {
  const counted = (node?.items ?? []).flatMap(({ count: number, reference: target, at }) => {
    const count = lowering.count(number, { least });
    if (count === undefined) return [];
    return [{ count, stated: number !== undefined, reference: target, at: at && lowering.sum(at) }];
  });
  return asKept(counted);
}

/**
 * A list of figures of one kind, in which a bare one takes the unit of the next one behind it that has one, else of the
 * last before it.
 */
export function quantitiesOf(
  lowering: ValueLowering,
  nodes: readonly QuantityNode[],
  due: Due = ANY,
): readonly Quantity[] {
  const last = nodes.at(-1);
  if (last !== undefined && due.dimensions.length > 0 && nodes.every(isBare)) {
    lowering.complainOfBare(last, due);
    return [];
  }
  const read = nodes.map((node) => unitOf(node.parts[0].unit));
  const hint = read.find((known) => known !== undefined);
  let first: Quantity | undefined;
  const quantities = nodes.flatMap((node, index) => {
    const fallback =
      read.slice(index).find((known) => known !== undefined) ??
      read.slice(0, index).findLast((known) => known !== undefined);
    // A figure that could only borrow a unit which is none is lost with it: the complaint stands at the unit.
    if (isBare(node) && fallback === undefined && !nodes.every(isBare)) return [];
    const quantity = lowering.quantity(node, due, { fallback, hint });
    if (quantity === undefined) return [];
    first ??= quantity;
    return isFault(compare(first, quantity)) ? (refuseUnlike(lowering, node, first) ?? []) : quantity;
  });
  return asKept(quantities);
}

function unitOf(node: UnitNode | undefined): Unit | undefined {
  const read = node && readUnit(node.text);
  return read === undefined || isUnitFault(read) ? undefined : read;
}
