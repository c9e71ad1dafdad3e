import type { Dimension } from "./dimension.ts";
import { BASES, RATIO } from "./dimension.ts";
import { coherentUnit } from "./product-unit.ts";
import type { Quantity } from "./quantity.ts";
import { convert } from "./quantity.ts";
import { isFault } from "./quantity-fault.ts";
import type { Unit } from "./unit.ts";
import { composeUnit, NO_UNIT, unit } from "./unit.ts";

/**
 * The value in coherent SI units as a binary float, for a formula: m, kg, s, A, K, and angles in rad; a temperature reading
 * in K, a calendar step in months, a count as itself, a rate of revolutions in 1/s.
 */
export function coherentFloat(a: Quantity): number {
  const converted = convert(a, formulaUnit(a.dimension));
  if (isFault(converted)) throw new Error(converted.message);
  return converted.value.toNumber();
}

/** The unit that `coherentFloat` gives values in. */
function formulaUnit(dimension: Dimension): Unit {
  if (dimension === RATIO) return NO_UNIT;
  const coherent = coherentUnit(dimension);
  const angle = dimension.exponents[BASES.indexOf("angle")] ?? 0;
  if (angle === 0) return coherent;
  const [radian] = unit("rad").parts;
  if (radian === undefined) return coherent;
  return composeUnit(
    coherent.parts.map((part) => (part.unit.symbol === "deg" ? { ...radian, power: part.power } : part)),
  );
}
