import type { ExchangeRate } from "../quantities/money.ts";
import type { Refusal } from "./refusal.ts";
import { refuse } from "./refusal.ts";
import type { Parameter } from "./signature.ts";
import type { Value } from "./value.ts";
import { describeValue } from "./value.ts";

/** A function of arithmetic, as hover and reference page tell it. */
export interface BuiltInFunction {
  readonly name: string;
  readonly parameters: readonly Parameter[];
  readonly returns: string;
  readonly summary: string;
  readonly formula: string;
  readonly meaning?: string;
  readonly example: string;
  /** The number of values has been checked. */
  readonly call: (values: readonly Value[], rates: readonly ExchangeRate[]) => Value | Refusal;
}

/** A function of one value. */
export function ofOne(compute: (value: Value) => Value | Refusal): BuiltInFunction["call"] {
  return ([only]) =>
    only === undefined ? refuse("out-of-range-argument", "one argument is due") : compute(only);
}

/** Where a value that is not counted was given. */
export function noNumber(name: string, value: Value, operand: number): Refusal {
  return refuse("wrong-dimension", `${name} takes a quantity, not ${describeValue(value)}`, { operand });
}
