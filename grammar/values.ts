/** The values of one statement by their roles. */
import type { ValueNode } from "./syntax.ts";

/**
 * A map for the few values of a statement, in the order in which they came: a link for each, since the engine's own map
 * reserves more for its first entry than all of them need, and a log has as many statements as lines.
 */
export class Values implements ReadonlyMap<string, ValueNode> {
  private role: string | undefined;
  private node: ValueNode | undefined;
  private others: Values | undefined;

  constructor(role?: string, node?: ValueNode) {
    this.role = role;
    this.node = node;
    this.others = undefined;
  }

  get size(): number {
    return (this.role === undefined ? 0 : 1) + (this.others?.size ?? 0);
  }

  get(role: string): ValueNode | undefined {
    for (let link: Values | undefined = this; link !== undefined; link = link.others)
      if (link.role === role) return link.node;
    return undefined;
  }

  has(role: string): boolean {
    return this.get(role) !== undefined;
  }

  set(role: string, node: ValueNode): this {
    if (this.role === undefined || this.role === role) {
      this.role = role;
      this.node = node;
    } else if (this.others === undefined) this.others = new Values(role, node);
    else this.others.set(role, node);
    return this;
  }

  delete(role: string): void {
    if (this.role !== role) {
      this.others?.delete(role);
      if (this.others?.role === undefined) this.others = undefined;
      return;
    }
    const { others } = this;
    this.role = others?.role;
    this.node = others?.node;
    this.others = others?.others;
  }

  *entries(): MapIterator<[string, ValueNode]> {
    for (let link: Values | undefined = this; link !== undefined; link = link.others)
      if (link.role !== undefined && link.node !== undefined) yield [link.role, link.node];
  }

  *keys(): MapIterator<string> {
    for (const [role] of this.entries()) yield role;
  }

  *values(): MapIterator<ValueNode> {
    for (const [, node] of this.entries()) yield node;
  }

  [Symbol.iterator](): MapIterator<[string, ValueNode]> {
    return this.entries();
  }

  forEach(each: (node: ValueNode, role: string, values: ReadonlyMap<string, ValueNode>) => void): void {
    for (const [role, node] of this.entries()) each(node, role, this);
  }
}
