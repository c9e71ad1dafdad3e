import type { ReferenceKind } from "../../../grammar/vocabulary/shape.ts";

/** What is wrong with names and references. */
export interface NotationFindings {
  "duplicate-name": { readonly what: string; readonly name: string };
  "unknown-reference": {
    readonly text: string;
    /** What its place takes. */
    readonly kinds: readonly ReferenceKind[];
    readonly nearest: readonly string[];
  };
  "ambiguous-reference": { readonly text: string; readonly candidates: readonly string[] };
  "reference-kind": { readonly text: string; readonly kind: string; readonly wanted: string };
  "like-cycle": { readonly paths: readonly string[] };
  "like-points-back": {
    readonly copy: string;
    readonly original: string;
    /** The record that points back. */
    readonly word: "joins" | "set_by" | "fit" | "pair";
    readonly targets: readonly string[];
  };
  "unused-definition": { readonly kind: string; readonly name: string };
  "no-vehicle": Record<never, never>;
  "second-vehicle": { readonly name: string; readonly first: string };
  "photo-not-found": { readonly path: string };
  "unknown-function": { readonly message: string };
  "out-of-range-argument": { readonly message: string };
  "calc-cycle": { readonly names: readonly string[] };
  "after-cycle": { readonly names: readonly string[] };
}
