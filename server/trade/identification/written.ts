/** Figures of an identification in the units in which the author gave the dimension. */

import { Decimal } from "../../quantities/decimal.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import { quantityOf } from "../../quantities/quantity.ts";
import { isPerInch } from "./family.ts";
import type { GivenDimension } from "./given.ts";

/** A given dimension with the quantity that it was written as. */
export interface Written {
  readonly given: GivenDimension;
  readonly quantity: Quantity;
}

const FIGURES = 5;

/** A value of the same dimension in its author's unit: mm, thou, threads per inch. */
export function asWritten({ given, quantity }: Written, value: number): Quantity {
  const { value: written, unit } = quantity;
  const ratio = isPerInch(given.name) ? given.value / value : value / given.value;
  return quantityOf(rounded(written.times(ratio)), unit);
}

/** Measured less expected, in the author's unit; of threads per inch, the difference of the counts. */
export function offBy(written: Written, expected: number): Quantity {
  const { value, unit } = written.quantity;
  const difference = value.minus(asWritten(written, expected).value);
  return quantityOf(rounded(difference), unit);
}

/** An expanded uncertainty in the author's unit. */
export function uncertaintyAsWritten({ given, quantity }: Written, uncertainty: number): Quantity {
  const { value, unit } = quantity;
  return quantityOf(value.times(uncertainty / given.value).toSignificantDigits(2), unit);
}

function rounded(value: Decimal): Decimal {
  return value.abs().lessThan(1e-9) ? new Decimal(0) : value.toSignificantDigits(FIGURES);
}
