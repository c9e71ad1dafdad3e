/** The nodes within a value, whatever its kind: what has a start and an end is a node. */
import type { Expression, Span, ValueNode } from "../../../grammar/syntax.ts";
import { Values } from "../../../grammar/values.ts";

/** A node of any depth: one with a `kind`, or a part of an expression, told apart by `is`. */
export type InnerNode = ValueNode | UnitLike | Expression;

/** Nodes that only stand within values. */
type UnitLike = Span & { readonly kind: "unit" | "counted" | "class"; readonly text?: string };

/** A value and every node within it, outermost first, in the order of the text. */
export function* innerNodes(value: ValueNode): Generator<InnerNode> {
  yield* within(value);
}

function* within(value: unknown): Generator<InnerNode> {
  if (Array.isArray(value)) {
    for (const item of value) yield* within(item);
  } else if (value instanceof Values) {
    for (const item of value.values()) yield* within(item);
  } else if (typeof value === "object" && value !== null) {
    if (isNode(value)) yield value;
    for (const item of Object.values(value)) if (typeof item === "object") yield* within(item);
  }
}

function isNode(value: object): value is InnerNode {
  return "start" in value && "end" in value && ("kind" in value || "is" in value);
}

/** True for a place within a stretch, its end included: a cursor behind the last letter of a word is at the word. */
export function touches({ start, end }: Span, offset: number): boolean {
  return start <= offset && offset <= end;
}
