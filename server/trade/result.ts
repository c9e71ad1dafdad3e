/** What a function of the trade gives: a value with what has to be said beside it, or a fault. */

export interface Limits {
  readonly lower: number;
  readonly upper: number;
}

/** The kinds of parameter a function may have. */
export type ParameterKind =
  | "quantity"
  | "any quantity"
  | "number"
  | "thread"
  | "class"
  | "material"
  | "friction"
  | "text";

/**
 * Why there is no result. The floor above finds the words; numbers are in SI units, `unit` is the one to print
 * them in. `impossible` names arguments that contradict each other.
 */
export type TradeFault =
  | {
      readonly kind: "out-of-range";
      readonly parameter: string;
      readonly value: number;
      readonly min?: number;
      readonly max?: number;
      readonly unit?: string;
    }
  | { readonly kind: "wrong-count"; readonly given: number; readonly least: number; readonly most: number }
  | { readonly kind: "wrong-kind"; readonly parameter: string; readonly expected: ParameterKind }
  | { readonly kind: "unreadable"; readonly text: string; readonly expected: string }
  | {
      readonly kind: "not-in-table";
      readonly wanted: string;
      readonly table: string;
      readonly known: readonly string[];
    }
  | { readonly kind: "class-unknown"; readonly parameter: string }
  | { readonly kind: "impossible"; readonly reason: string }
  | { readonly kind: "not-finite" };

export interface Faulty {
  readonly fault: TradeFault;
}

/** A value with what has to be said beside it; `unit` overrides the customary one. */
export interface Computed<Value extends number | Limits = number | Limits> {
  readonly value: Value;
  readonly notes?: readonly string[];
  readonly unit?: string;
}

export type TradeResult = Computed | Faulty;
