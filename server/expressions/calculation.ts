/** One expression as text, calculated: what `cotter calc` prints, for people and for machines. */
import { readExpression } from "../../grammar/expression-parser.ts";
import type { Span, SyntaxFault } from "../../grammar/syntax.ts";
import type { ExchangeRate, Money } from "../quantities/money.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { formatQuantity } from "../quantities/quantity.ts";
import type { Lookup } from "./evaluate.ts";
import { evaluate } from "./evaluate.ts";
import type { ExpressionFault } from "./refusal.ts";
import type { Value } from "./value.ts";
import { formatValue, quoted } from "./value.ts";

export type Calculation =
  | { readonly value: Value; readonly notes: readonly string[] }
  | { readonly fault: ExpressionFault };

/** A quantity in the machine form; `unit` is null of a bare number. */
export interface QuantityObject {
  readonly value: number;
  readonly unit: string | null;
  readonly text: string;
}

/** `cotter/calc/1`: an absent thing is null. Money is a decimal text, as everywhere in the machine form. */
export interface CalculationObject {
  readonly schema: "cotter/calc/1";
  readonly value: number | string | null;
  readonly unit: string | null;
  readonly text: string;
  readonly kind: "quantity" | "money" | "limits" | "text";
  readonly lower: QuantityObject | null;
  readonly upper: QuantityObject | null;
  readonly notes: readonly string[];
}

/** `cotter/failure/1`, with the place in the expression beside the message that every failure has. */
export interface FailureObject {
  readonly schema: "cotter/failure/1";
  readonly message: string;
  readonly code: ExpressionFault["code"];
  /** From 1, in UTF-16 units. */
  readonly from: { readonly column: number };
  /** Exclusive. */
  readonly to: { readonly column: number };
}

/** Reads and evaluates a text; never throws. Positions in a fault are those of the text. */
export function calculate(text: string, lookup?: Lookup, rates?: readonly ExchangeRate[]): Calculation {
  const read = readExpression(text, 0);
  return read.tree === undefined ? { fault: unreadable(read.fault) } : evaluate(read.tree, lookup, rates);
}

/** A fault of the text, as one of its expression. */
function unreadable(fault: SyntaxFault): ExpressionFault {
  const { start, end, fixes } = fault;
  return {
    code: fault.code === "unknown-unit" ? "unknown-unit" : "unreadable-expression",
    message:
      fault.found === ""
        ? `expected ${fault.expected}`
        : `expected ${fault.expected} at ${quoted(fault.found)}`,
    start,
    end,
    fixes,
  };
}

/** The lines for a terminal: the result and its notes; or the expression, the operand at fault marked below, and why. */
export function calculationLines(text: string, calculation: Calculation): readonly string[] {
  if ("fault" in calculation) {
    return [...marked(text, calculation.fault), calculation.fault.message];
  }
  return [formatValue(calculation.value), ...calculation.notes.map((note) => `  ${note}`)];
}

/** The machine form. */
export function calculationObject(calculation: Calculation): CalculationObject | FailureObject {
  if ("fault" in calculation) return failureObject(calculation.fault);
  const { value, notes } = calculation;
  const nothing = { value: null, unit: null, lower: null, upper: null };
  const common = { schema: "cotter/calc/1", ...nothing, text: formatValue(value), notes } as const;
  switch (value.kind) {
    case "quantity": {
      const { value: number, unit } = quantityObject(value.quantity);
      return { ...common, kind: "quantity", value: number, unit };
    }
    case "limits": {
      const [lower, upper] = [quantityObject(value.lower), quantityObject(value.upper)];
      return { ...common, kind: "limits", unit: upper.unit, lower, upper };
    }
    case "money":
      return { ...common, kind: "money", value: decimalText(value), unit: value.money.currency };
    case "price": {
      const { money, per } = value.price;
      return {
        ...common,
        kind: "money",
        value: decimalText({ money }),
        unit: `${money.currency}/${per.symbol}`,
      };
    }
    default:
      return { ...common, kind: "text" };
  }
}

function failureObject({ message, code, start, end }: ExpressionFault): FailureObject {
  return {
    schema: "cotter/failure/1",
    message,
    code,
    from: { column: start + 1 },
    to: { column: end + 1 },
  };
}

function quantityObject(quantity: Quantity): QuantityObject {
  const { symbol } = quantity.unit;
  return {
    // A nought has no sign.
    value: quantity.value.toNumber() + 0,
    unit: symbol === "" ? null : symbol,
    text: formatQuantity(quantity),
  };
}

function decimalText({ money }: { readonly money: Money }): string {
  return formatValue({ kind: "money", money }).replace(/ .*/, "");
}

/** The most of an expression that is shown around the operand at fault. */
const WIDEST = 100;

/** The expression and a line of carets below the operand at fault; of a long one the part around it. */
function marked(text: string, { start, end }: Span): readonly string[] {
  const line = text.replace(/[\t\r\n]/g, " ");
  if (line.trim() === "") return [];
  const from = line.length <= WIDEST ? 0 : Math.max(0, Math.min(start - WIDEST / 4, line.length - WIDEST));
  const shown = line.slice(from, from + WIDEST);
  const width = Math.max(1, Math.min(end, from + shown.length) - start);
  return [shown, `${" ".repeat(start - from)}${"^".repeat(width)}`];
}
