/** Times of work, in hours, and times of the calendar, in days. */
import type { QuantityNode } from "../../../grammar/syntax.ts";
import type { Decimal } from "../../quantities/decimal.ts";
import { convert } from "../../quantities/quantity.ts";
import { isFault } from "../../quantities/quantity-fault.ts";
import type { Unit } from "../../quantities/unit.ts";
import { unit } from "../../quantities/unit.ts";
import { DAYS, WORKING_TIME } from "./due.ts";
import type { ValueLowering } from "./values.ts";

/** Hours of a time in h or min; other units of time are refused. */
export function inHours(lowering: ValueLowering, node: QuantityNode, fallback?: Unit): Decimal | undefined {
  const read = lowering.quantity(node, WORKING_TIME, { fallback });
  if (read === undefined) return undefined;
  if (node.parts.some((part) => part.unit !== undefined && !/^(?:h|min)$/.test(part.unit.text)))
    return lowering.complain("unreadable-value", node, WORKING_TIME.expected);
  return timeIn(lowering, node, read, "h");
}

/** Calendar days of a time in days or weeks. */
export function inDays(lowering: ValueLowering, node: QuantityNode, fallback?: Unit): Decimal | undefined {
  const read = lowering.quantity(node, DAYS, { fallback });
  return read && timeIn(lowering, node, read, "d");
}

function timeIn(
  lowering: ValueLowering,
  node: QuantityNode,
  read: Parameters<typeof convert>[0],
  symbol: "h" | "d",
): Decimal | undefined {
  const converted = convert(read, unit(symbol));
  if (isFault(converted)) return undefined;
  return converted.value.isNegative()
    ? lowering.complain("unreadable-value", node, "a time that is not negative")
    : converted.value;
}
