import type { Quantity } from "./quantity.ts";
import { absolute, add, convert, negate } from "./quantity.ts";
import type { QuantityFault } from "./quantity-fault.ts";
import { isFault } from "./quantity-fault.ts";

/** Units that may follow one another in one quantity, falling: `1 deg 30 arcmin`, `5 ft 3 in`, `2 h 30 min`. */
const CHAINS: readonly (readonly string[])[] = [
  ["deg", "arcmin", "arcsec"],
  ["h", "min", "s"],
  ["ft", "in"],
  ["lb", "oz"],
  ["week", "d", "h"],
  ["year", "month"],
];

/** Why two quantities in a row are not one. */
export interface CompoundFault {
  readonly fault: "no-compound";
  readonly message: string;
}

/** Whether a quantity in the second unit may continue one in the first: `continuesCompound("ft", "in")`. */
export function continuesCompound(first: string, second: string): boolean {
  const [above, below] = [chainSymbol(first), chainSymbol(second)];
  return CHAINS.some((chain) => chain.includes(above) && chain.indexOf(below) > chain.indexOf(above));
}

/**
 * The sum of a compound quantity in its first unit, where that has an end in decimals, else in its last
 * (`1 deg 30 arcmin` is 1.5 deg, `1 deg 20 arcmin` is 80 arcmin). A minus before the first holds for the whole.
 */
export function compoundQuantity(
  parts: readonly [Quantity, ...Quantity[]],
): Quantity | CompoundFault | QuantityFault {
  const [first, ...others] = parts;
  let total = absolute(first);
  let last = first;
  for (const part of others) {
    const fault = compoundFault(last, part);
    if (fault !== undefined) return fault;
    const sum = add(total, part);
    if (isFault(sum)) return sum;
    const full = sum.exact ? sum : sumInLast(total, part);
    if (isFault(full)) return full;
    total = full;
    last = part;
  }
  return first.value.isNegative() ? negate(total) : total;
}

function sumInLast(total: Quantity, part: Quantity): Quantity | QuantityFault {
  const converted = convert(total, part.unit);
  return isFault(converted) ? converted : add(converted, part);
}

function compoundFault(above: Quantity, below: Quantity): CompoundFault | undefined {
  const [first, second] = [above.unit.symbol, below.unit.symbol];
  if (!continuesCompound(first, second)) {
    return { fault: "no-compound", message: `${second} does not continue a quantity in ${first}` };
  }
  if (below.value.isNegative()) {
    return { fault: "no-compound", message: `the sign stands before the first part: ${second} is negative` };
  }
  return undefined;
}

function chainSymbol(symbol: string): string {
  if (symbol === "°") return "deg";
  return symbol === "'" ? "arcmin" : symbol;
}
