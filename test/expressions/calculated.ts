/** Expressions as somebody types them, for tests. */
import type { Calculation } from "../../server/expressions/calculation.ts";
import { calculate } from "../../server/expressions/calculation.ts";
import type { Lookup, NameFault } from "../../server/expressions/evaluate.ts";
import type { ExpressionFault } from "../../server/expressions/refusal.ts";
import type { Value } from "../../server/expressions/value.ts";
import { formatValue } from "../../server/expressions/value.ts";
import type { Quantity } from "../../server/quantities/quantity.ts";

/** The printed result; of a fault its code and the words it points to: `wrong-dimension at 1 mm`. */
export function shown(text: string, lookup?: Lookup): string {
  const calculation = calculate(text, lookup);
  if (!("fault" in calculation)) return formatValue(calculation.value);
  const { code, start, end } = calculation.fault;
  return `${code} at ${text.slice(start, end)}`;
}

/** The value; a fault fails the test. */
export function value(text: string, lookup?: Lookup): Value {
  return answered(text, calculate(text, lookup)).value;
}

/** The quantity; anything else fails the test. */
export function quantity(text: string, lookup?: Lookup): Quantity {
  const found = value(text, lookup);
  if (found.kind !== "quantity") throw new Error(`${text} gives ${found.kind}`);
  return found.quantity;
}

/** The number in the unit that the expression ends in. */
export function number(text: string, lookup?: Lookup): number {
  return quantity(text, lookup).value.toNumber();
}

/** What is said beside the result. */
export function notes(text: string, lookup?: Lookup): readonly string[] {
  return answered(text, calculate(text, lookup)).notes;
}

/** The fault; a result fails the test. */
export function fault(text: string, lookup?: Lookup): ExpressionFault {
  const calculation = calculate(text, lookup);
  if ("fault" in calculation) return calculation.fault;
  throw new Error(`${text} gives ${formatValue(calculation.value)}`);
}

/** Names of a build: each stands for the value of an expression, or for a fault. */
export function names(meanings: Readonly<Record<string, string | NameFault>>): Lookup {
  const known = new Map(Object.entries(meanings));
  return (name) => {
    const meaning = known.get(name);
    return typeof meaning === "string" ? value(meaning) : meaning;
  };
}

function answered(text: string, calculation: Calculation): Exclude<Calculation, { fault: unknown }> {
  if ("fault" in calculation) throw new Error(`${text}: ${calculation.fault.message}`);
  return calculation;
}
