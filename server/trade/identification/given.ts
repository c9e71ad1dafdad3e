/** A dimension that somebody has measured, in SI units with what is known of its uncertainty. */

import { coherentFloat } from "../../quantities/coherent.ts";
import { describeDimension, multiplyDimensions, RATIO } from "../../quantities/dimension.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import { asDifference, hasDimension } from "../../quantities/quantity.ts";
import { unit } from "../../quantities/unit.ts";
import { isPerInch } from "./family.ts";

export interface GivenDimension {
  /** As its author named it. */
  readonly name: string;
  /** SI units; of threads per inch the pitch in m. */
  readonly value: number;
  /** The kind of quantity: `length`, `angle`, `area`. */
  readonly is: string;
  /** Expanded, k = 2; undefined where nobody states it. */
  readonly uncertainty: number | undefined;
  /** One step of its last decimal; undefined where it was written without one. */
  readonly resolution: number | undefined;
}

export interface GivenFault {
  readonly fault: "not-positive" | "not-a-count";
  readonly message: string;
}

const INCH = 0.0254;

/** A quantity under a name, with its expanded uncertainty in a unit of the same kind. */
export function givenDimension(
  name: string,
  quantity: Quantity,
  uncertainty?: Quantity,
): GivenDimension | GivenFault {
  if (!quantity.value.isPositive() || quantity.value.isZero())
    return { fault: "not-positive", message: `${name} is a size, so it is more than nothing` };
  if (isPerInch(name)) return pitchOfCount(name, quantity, uncertainty);
  const value = coherentFloat(quantity);
  const { places } = quantity;
  return {
    name,
    value,
    is: kindOf(quantity),
    uncertainty: uncertainty && Math.abs(coherentFloat(asDifference(uncertainty))),
    resolution:
      places === undefined || places === 0 ? undefined : (value / quantity.value.toNumber()) * 10 ** -places,
  };
}

/** Threads per inch, as a bare number or as `24 1/in`, are a pitch. */
function pitchOfCount(
  name: string,
  quantity: Quantity,
  uncertainty: Quantity | undefined,
): GivenDimension | GivenFault {
  const count = countPerInch(quantity);
  if (count === undefined) {
    const found = describeDimension(quantity.dimension);
    return { fault: "not-a-count", message: `${name} is a number of threads per inch, not a ${found}` };
  }
  const value = INCH / count;
  const share = uncertainty?.value.abs().div(quantity.value).toNumber();
  return {
    name,
    value,
    is: "length",
    uncertainty: share === undefined ? undefined : share * value,
    resolution: undefined,
  };
}

function countPerInch(quantity: Quantity): number | undefined {
  if (quantity.dimension === RATIO) return coherentFloat(quantity);
  const product = multiplyDimensions(quantity.dimension, unit("m").dimension);
  return product === RATIO ? coherentFloat(quantity) * INCH : undefined;
}

function kindOf(quantity: Quantity): string {
  for (const name of ["length", "angle", "area"] as const) if (hasDimension(quantity, name)) return name;
  return describeDimension(quantity.dimension);
}
