import type { Span, SyntaxFault, SyntaxFix } from "../../../grammar/syntax.ts";

/** What can be wrong with a value that reads well: its unit, its kind, its class. */
export type LoweringFaultCode =
  | "unknown-unit"
  | "wrong-dimension"
  | "unreadable-value"
  | "decimal-comma"
  | "reserved-name"
  | "bad-date";

export interface LoweringFault extends Span {
  readonly code: LoweringFaultCode;
  readonly found: string;
  readonly expected: string;
  /** Why it was probably written so: the `nm` trap. */
  readonly reason: string | undefined;
  readonly fixes: readonly SyntaxFix[];
}

/** Anything wrong with the text of one block. */
export type TextFault = SyntaxFault | LoweringFault;
