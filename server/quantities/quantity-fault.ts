import type { Dimension } from "./dimension.ts";
import { describeDimension } from "./dimension.ts";

export type Operation = "add" | "subtract" | "multiply" | "divide" | "power" | "compare" | "convert";

/** What a message names of an operand: its dimension in words and its unit as written (empty for a bare number). */
export interface Operand {
  readonly dimension: string;
  readonly unit: string;
}

/** Two operands that do not go together. */
export interface DimensionFault {
  readonly fault: "dimension";
  readonly operation: Operation;
  readonly left: Operand;
  readonly right: Operand;
  readonly message: string;
}

/** Why an operation has no result. */
export type QuantityFault =
  | DimensionFault
  | { readonly fault: "temperature-readings"; readonly operation: Operation; readonly message: string }
  | { readonly fault: "division-by-zero"; readonly operation: Operation; readonly message: string }
  | { readonly fault: "calendar"; readonly operation: Operation; readonly message: string }
  | { readonly fault: "power"; readonly operation: Operation; readonly message: string }
  | { readonly fault: "magnitude"; readonly operation: Operation; readonly message: string };

/** Whether an operation of this floor gave a fault instead of its result. */
export function isFault<T extends object | number>(result: T): result is Extract<T, { fault: string }> {
  return typeof result === "object" && "fault" in result;
}

/** The result of an operation of this floor; undefined where it has none. */
export function unlessFault<T extends object | number>(
  result: T | undefined,
): Exclude<T, { fault: string }> | undefined {
  return result === undefined || isFault(result) ? undefined : (result as Exclude<T, { fault: string }>);
}

interface Measured {
  readonly dimension: Dimension;
  readonly unit: { readonly symbol: string };
}

const VERBS: Readonly<Record<Operation, readonly [string, string]>> = {
  add: ["cannot add", "and"],
  subtract: ["cannot subtract", "less"],
  multiply: ["cannot multiply", "by"],
  divide: ["cannot divide", "by"],
  power: ["cannot raise", "to"],
  compare: ["cannot compare", "and"],
  convert: ["cannot convert", "to"],
};

export function dimensionFault(operation: Operation, left: Measured, right: Measured): DimensionFault {
  const [verb, joint] = VERBS[operation];
  const [a, b] = [operand(left), operand(right)];
  const message = `${verb} unlike dimensions: ${inWords(a)} ${joint} ${inWords(b)}`;
  return { fault: "dimension", operation, left: a, right: b, message };
}

function operand({ dimension, unit }: Measured): Operand {
  return { dimension: describeDimension(dimension), unit: unit.symbol };
}

function inWords({ dimension, unit }: Operand): string {
  return unit === "" ? dimension : `${dimension} (${unit})`;
}

export function powerFault(message: string): QuantityFault {
  return { fault: "power", operation: "power", message };
}

export function zeroFault(operation: Operation): QuantityFault {
  return { fault: "division-by-zero", operation, message: "division by zero" };
}

export function readingFault(operation: Operation, a: Measured, b: Measured): QuantityFault {
  const reading = a.dimension.kind === "point" ? a : b;
  const verb = operation === "multiply" ? "multiplied" : "divided";
  const message = `a temperature reading (${reading.unit.symbol}) cannot be ${verb}; a temperature difference is written in K`;
  return { fault: "temperature-readings", operation, message };
}
