/** A quantity in the other units that people use for it. */
import type { DimensionName } from "../../quantities/dimension.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import { convert, formatQuantity, hasDimension } from "../../quantities/quantity.ts";
import { isFault } from "../../quantities/quantity-fault.ts";
import { isUnitFault, readUnit } from "../../quantities/unit.ts";

/** The customary units of a dimension, metric before imperial. */
const CUSTOMARY: readonly (readonly [DimensionName, string])[] = [
  ["length", "mm in"],
  ["area", "mm2 in2"],
  ["volume", "l cc imp_pt us_pt"],
  ["mass", "kg lb"],
  ["force", "N lbf kgf"],
  ["torque", "N.m lbf.ft lbf.in kgf.m"],
  ["pressure", "bar psi kPa"],
  ["stiffness", "N/mm lbf/in"],
  ["power", "kW hp PS"],
  ["speed", "km/h mph"],
  ["frequency", "rpm Hz"],
  ["temperature", "degC degF"],
  ["temperature_difference", "K degF"],
  ["time", "min h d"],
  ["angle", "deg arcmin"],
];

/** Units for what is small or large in its dimension, in place of the usual ones. */
const SMALL_LENGTHS = "mm µm thou";
const LARGE_LENGTHS = "m ft km mile";

/** The customary units that a quantity can be written in, its own left out. */
function customaryUnits(quantity: Quantity): readonly string[] {
  const found = CUSTOMARY.find(([dimension]) => hasDimension(quantity, dimension));
  if (found === undefined) return [];
  const [dimension, usual] = found;
  const units = dimension === "length" ? lengthUnits(quantity) : usual;
  return units.split(" ").filter((symbol) => symbol !== quantity.unit.symbol);
}

/** `54 N.m` as `39.8 lbf.ft`, `478 lbf.in` and `5.51 kgf.m`. */
export function inOtherUnits(quantity: Quantity): readonly string[] {
  return customaryUnits(quantity).flatMap((symbol) => inUnit(quantity, symbol) ?? []);
}

export function inUnit(quantity: Quantity, symbol: string): string | undefined {
  const unit = readUnit(symbol);
  if (isUnitFault(unit)) return undefined;
  const converted = convert(quantity, unit);
  return isFault(converted) ? undefined : formatQuantity(converted);
}

function lengthUnits(quantity: Quantity): string {
  const unit = readUnit("m");
  const metres = isUnitFault(unit) ? quantity : convert(quantity, unit);
  if (isFault(metres)) return "mm in";
  const size = metres.value.abs().toNumber();
  if (size < 0.001) return SMALL_LENGTHS;
  return size > 3 ? LARGE_LENGTHS : "mm in";
}
