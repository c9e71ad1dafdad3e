/** Quantities as a user writes them, for tests: `q("9.12 mm")`; a fault is an error of the test. */

import type { Quantity } from "../../server/quantities/quantity.ts";
import { asDifference, formatQuantity, quantity } from "../../server/quantities/quantity.ts";
import type { QuantityFault } from "../../server/quantities/quantity-fault.ts";
import { isFault } from "../../server/quantities/quantity-fault.ts";

/** A number, a space and a unit; a number alone is a bare number. */
export function q(text: string): Quantity {
  const [, number = "", unit = ""] = /^(\S+)(?:\s+(.*))?$/.exec(text) ?? [];
  const result = quantity(number, unit);
  if (isFault(result)) throw new Error(`${text}: ${JSON.stringify(result)}`);
  return result;
}

/** The same as a rise or a tolerance: of temperatures a difference. */
export function rise(text: string): Quantity {
  return asDifference(q(text));
}

/** The printed result, or the message of the fault. */
export function shown(result: Quantity | QuantityFault): string {
  return isFault(result) ? result.message : formatQuantity(result);
}

/** The result without its fault; a fault fails the test. */
export function ok<T extends object>(result: T): Exclude<T, { fault: string }> {
  if (isFault(result)) throw new Error(JSON.stringify(result));
  return result as Exclude<T, { fault: string }>;
}
