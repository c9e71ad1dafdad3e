import type { ExpressionNode } from "../../grammar/syntax.ts";
import type { ExpressionFault } from "../expressions/refusal.ts";
import type { Value } from "../expressions/value.ts";
import type { Place } from "./source.ts";
import type { TreeNode } from "./tree/node.ts";

/** One `calc:` and what came of it. */
export interface Calculation {
  readonly name: string;
  /** The line that says it. */
  readonly place: Place;
  /** The expression within its block. */
  readonly expression: ExpressionNode;
  /** Of a block of the tree, the thing that it belongs to. */
  readonly node: TreeNode | undefined;
  readonly outcome: Outcome;
}

export type Outcome =
  | { readonly is: "value"; readonly value: Value; readonly notes: readonly string[] }
  /** Its own mistake; positions are those of its block. */
  | { readonly is: "fault"; readonly fault: ExpressionFault }
  /** Nothing is wrong, but something that it needs is not known yet. */
  | { readonly is: "waiting"; readonly fault: ExpressionFault }
  /** It builds on a calculation that has no value. */
  | { readonly is: "without ground"; readonly fault: ExpressionFault }
  /** It builds on itself, through these. */
  | { readonly is: "cycle"; readonly names: readonly string[] };
