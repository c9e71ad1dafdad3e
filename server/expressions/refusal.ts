import type { Span, SyntaxFix } from "../../grammar/syntax.ts";

/** The codes of what can be wrong with an expression; those of complaints. */
export type ExpressionFaultCode =
  | "unreadable-expression"
  | "unknown-function"
  | "out-of-range-argument"
  | "wrong-dimension"
  | "unknown-unit"
  | "unknown-name";

/** Why an expression has no value, at the operand it points to; positions are those of the tree. */
export interface ExpressionFault extends Span {
  readonly code: ExpressionFaultCode;
  readonly message: string;
  readonly fixes: readonly SyntaxFix[];
}

/** Why an operation has no result, told before it is known where its operands stand. */
export interface Refusal {
  readonly refused: ExpressionFaultCode;
  readonly message: string;
  /** The operand at fault, by its place among those given; absent where it is the operation as a whole. */
  readonly operand?: number;
  /** Units of which the operand probably lacks one, or has a wrong one; the likeliest first. */
  readonly units?: readonly string[];
  /** Nothing but the first of `units` can have been meant. */
  readonly sure?: boolean;
}

export function isRefusal(result: object): result is Refusal {
  return "refused" in result;
}

export function refuse(
  refused: ExpressionFaultCode,
  message: string,
  more: Pick<Refusal, "operand" | "units" | "sure"> = {},
): Refusal {
  return { refused, message, ...more };
}
