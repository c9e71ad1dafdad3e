/** The tree of the vehicle: parts, joints, systems and circuits under their assemblies. */

import type { Place } from "../source.ts";
import type { SourcedRecord, TreeKind, TreeNode } from "./node.ts";
import type { TextDefinition } from "./text-definition.ts";

export interface Vehicle {
  readonly title: string | undefined;
  readonly header: Place | undefined;
  readonly records: readonly SourcedRecord[];
  readonly lost: readonly Place[];
}

interface GrowingNode extends TreeNode {
  parent: TreeNode | undefined;
  children: GrowingNode[];
}

export class Tree {
  readonly root: TreeNode;
  private readonly byPath = new Map<string, GrowingNode>();
  private readonly byLastName = new Map<string, TreeNode[]>();

  constructor(vehicle: Vehicle, definitions: Iterable<TextDefinition>) {
    this.root = this.node("vehicle", "vehicle", vehicle, undefined);
    for (const definition of definitions)
      this.node(definition.path, definition.kind, definition, definition.copyOf);
    for (const node of [...this.byPath.values()]) this.joinToParent(node);
    for (const node of this.byPath.values()) {
      const name = node.path.slice(node.path.lastIndexOf(".") + 1);
      this.byLastName.set(name, [...(this.byLastName.get(name) ?? []), node]);
    }
  }

  at(path: string): TreeNode | undefined {
    return this.byPath.get(path);
  }

  /** Every thing of the tree, in the order of definition; assemblies without a block come last. */
  nodes(): IterableIterator<TreeNode> {
    return this.byPath.values();
  }

  *ofKind(kind: TreeKind): Generator<TreeNode> {
    for (const node of this.byPath.values()) if (node.kind === kind) yield node;
  }

  /** The things whose path is this or ends in it. */
  withTail(tail: string): readonly TreeNode[] {
    const name = tail.slice(tail.lastIndexOf(".") + 1);
    const ending = `.${tail}`;
    return (this.byLastName.get(name) ?? []).filter(({ path }) => path === tail || path.endsWith(ending));
  }

  private node(
    path: string,
    kind: TreeKind,
    { title, header, records, lost }: Vehicle,
    copyOf: string | undefined,
  ): GrowingNode {
    const order = this.byPath.size;
    const made: GrowingNode = {
      path,
      kind,
      title,
      header,
      copyOf,
      records,
      lost,
      order,
      parent: undefined,
      children: [],
    };
    this.byPath.set(path, made);
    return made;
  }

  private joinToParent(node: GrowingNode): void {
    let child = node;
    while (child !== this.root && child.parent === undefined) {
      const dot = child.path.lastIndexOf(".");
      const parentPath = dot < 0 ? "vehicle" : child.path.slice(0, dot);
      const parent = this.byPath.get(parentPath) ?? this.node(parentPath, "assembly", NO_BLOCK, undefined);
      child.parent = parent;
      parent.children.push(child);
      child = parent;
    }
  }
}

const NO_BLOCK: Vehicle = { title: undefined, header: undefined, records: [], lost: [] };
