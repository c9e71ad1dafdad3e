import type { ValueNode } from "../../../grammar/syntax.ts";

export type NodeOf<K extends ValueNode["kind"]> = Extract<ValueNode, { kind: K }>;

/** The values of one statement by role, each asked for with the kind of node that the vocabulary puts there. */
export class NodeValues {
  private readonly values: ReadonlyMap<string, ValueNode>;

  constructor(values: ReadonlyMap<string, ValueNode>) {
    this.values = values;
  }

  /** The node of a role, if it was written and is of that kind. */
  get<K extends ValueNode["kind"]>(role: string, kind: K): NodeOf<K> | undefined {
    const node = this.values.get(role);
    return node?.kind === kind ? (node as NodeOf<K>) : undefined;
  }

  has(role: string): boolean {
    return this.values.has(role);
  }

  /** The text of a string or word. */
  text(role: string): string | undefined {
    const node = this.values.get(role);
    return node?.kind === "string" || node?.kind === "word" ? node.text : undefined;
  }
}
