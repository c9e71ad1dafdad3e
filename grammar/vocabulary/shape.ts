/**
 * The shapes that the arguments of a header, record or fact can have, as data: the parser reads by them,
 * completion proposes by them, the printer and the reference page describe by them.
 */
import type { BlockWord, SyntaxFaultCode } from "../syntax.ts";

/** The kinds of things that a place can name. The first five share one tree; the others have names of their own. */
export type ReferenceKind =
  | "assembly"
  | "part"
  | "joint"
  | "system"
  | "circuit"
  | "job"
  | "hold"
  | "supplier"
  | "gauge"
  | "setup"
  | "donor"
  | "snag";

export const TREE_KINDS = [
  "assembly",
  "part",
  "joint",
  "system",
  "circuit",
] as const satisfies ReferenceKind[];

/** What a quantity must measure; `any` where the name of the characteristic decides. */
export type DimensionHint =
  | "any"
  | "length"
  | "area"
  | "volume"
  | "time"
  | "torque"
  | "pressure"
  | "voltage"
  | "current or power"
  | "ratio"
  | "distance"
  | "count of runs";

/** One value in place. Each `value` names a rule of the value parser (`value-parser.ts`). */
export type Shape =
  | {
      readonly value:
        | "string"
        | "date"
        | "dateRange"
        | "number"
        | "money"
        | "moneyRate"
        | "exchange"
        | "tolerance"
        | "bolt"
        | "nut"
        | "countedQuantity"
        | "torque"
        | "friction"
        | "life"
        | "recheck"
        | "week"
        | "takes"
        | "ranges"
        | "pack"
        | "wireGauge"
        | "thread"
        | "stops"
        | "definition"
        | "expression";
    }
  /** With `nominal`, a figure without tolerance is allowed too. */
  | { readonly value: "limits"; readonly nominal?: true }
  /** `quantities` are parted by commas; a `sequence` is not, and each is of another dimension. */
  | { readonly value: "quantity" | "quantities" | "sequence"; readonly of: DimensionHint }
  | { readonly value: "word"; readonly of: WordSource }
  | { readonly value: "words"; readonly of: WordSource }
  | {
      readonly value: "reference" | "references";
      readonly to: readonly ReferenceKind[];
      readonly member?: true;
    }
  | {
      readonly value: "countedReferences";
      readonly to: readonly ReferenceKind[];
      /** `required`: the number must be written; `optional`: it may be left out. */
      readonly count: "required" | "optional";
      /** True where each may carry `at MONEY`. */
      readonly priced?: true;
    }
  | { readonly value: "either"; readonly options: readonly Shape[] };

/** Where a bare word comes from. */
export type WordSource =
  | { readonly choices: readonly string[] }
  | { readonly names: "characteristic" | "new name" | "path" | "currency" };

/** A value that stands in its place, one after the other. */
export interface Element {
  readonly role: string;
  readonly shape: Shape;
  readonly optional?: true;
}

/** A value behind words of its own, in any order after the elements; without a shape a bare flag. */
export interface Clause {
  readonly words: readonly [string, ...string[]];
  readonly role: string;
  readonly shape?: Shape;
  /** True where the statement means nothing without it, or without one of those it excludes. */
  readonly required?: true;
  /** Of the clauses with the same name here, a statement has one. */
  readonly insteadOf?: string;
}

export interface ArgumentShape {
  readonly elements: readonly Element[];
  readonly clauses: readonly Clause[];
  /** Whether the statement may end in a string, its note, or has to. */
  readonly note: boolean | "required";
}

/** A line that is refused, and the code of the one complaint about it. */
export interface BadExample {
  readonly text: string;
  readonly code: SyntaxFaultCode | MeaningCode;
}

/** Codes of complaints that need the meaning of a line, which floors above the grammar find. */
export type MeaningCode = "unknown-reference" | "reference-kind" | "reserved-name" | "wrong-dimension";

interface EntryText {
  readonly word: string;
  /** What it says, in one line. */
  readonly help: string;
  /** A line of the example build (`docs/notation/example.cotter`). */
  readonly example: string;
  /** What that line could look like with a usual slip in it. */
  readonly bad: BadExample;
  /** A choice made where the notation's description is silent. */
  readonly choice?: string;
}

export interface BlockEntry extends EntryText, ArgumentShape {
  readonly word: BlockWord;
}

export interface RecordEntry extends EntryText, ArgumentShape {
  readonly blocks: readonly BlockWord[];
  /** True where a block may hold several. */
  readonly repeats: boolean;
}

// Short forms to write the tables with.

export const string: Shape = { value: "string" };
export const date: Shape = { value: "date" };
export const number: Shape = { value: "number" };
export const money: Shape = { value: "money" };
export const limits: Shape = { value: "limits" };
export const quantity = (of: DimensionHint): Shape => ({ value: "quantity", of });
export const quantities = (of: DimensionHint): Shape => ({ value: "quantities", of });
export const choice = (...choices: string[]): Shape => ({ value: "word", of: { choices } });
export const choices = (...choices: string[]): Shape => ({ value: "words", of: { choices } });
export const characteristic: Shape = { value: "word", of: { names: "characteristic" } };
export const newName: Shape = { value: "word", of: { names: "new name" } };
export const reference = (...to: ReferenceKind[]): Shape => ({ value: "reference", to });
/** `REF.NAME`: a characteristic of something. */
export const member: Shape = { value: "reference", to: TREE_KINDS, member: true };
export const references = (...to: ReferenceKind[]): Shape => ({ value: "references", to });
export const either = (...options: Shape[]): Shape => ({ value: "either", options });

export const element = (role: string, shape: Shape): Element => ({ role, shape });
export const optional = (role: string, shape: Shape): Element => ({ role, shape, optional: true });
export const clause = (word: string, role: string, shape: Shape): Clause => ({ words: [word], role, shape });
export const required = (word: string, role: string, shape: Shape): Clause => ({
  words: [word],
  role,
  shape,
  required: true,
});
export const flag = (role: string, ...words: [string, ...string[]]): Clause => ({ words, role });
