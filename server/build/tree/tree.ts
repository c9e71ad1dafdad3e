/** The tree of the vehicle: parts, joints, systems and circuits under their assemblies. */

import { listUnder } from "../list-under.ts";
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
  private readonly byKind = new Map<TreeKind, TreeNode[]>();
  /** Every thing, as `nodes()` has them. */
  readonly all: readonly TreeNode[];
  /** Everything but the parts: what is measured of it is no item's. */
  readonly besideParts: readonly TreeNode[];
  private readonly byLastName = new Map<string, TreeNode[]>();
  /** By the last two names: of the last alone there may be one in every corner of the vehicle. */
  private readonly byLastNames = new Map<string, TreeNode[]>();

  constructor(vehicle: Vehicle, definitions: Iterable<TextDefinition>) {
    this.root = this.node("vehicle", "vehicle", vehicle, undefined);
    for (const definition of definitions) {
      // Nothing can take the place of the whole; the name has been complained about.
      if (definition.path !== this.root.path)
        this.node(definition.path, definition.kind, definition, definition.copyOf);
    }
    for (const node of [...this.byPath.values()]) this.joinToParent(node);
    this.all = [...this.byPath.values()];
    this.besideParts = this.all.filter(({ kind }) => kind !== "part");
    for (const node of this.all) {
      listUnder(this.byKind, node.kind, node);
      if (node === this.root) continue;
      listUnder(this.byLastName, node.name, node);
      if (node.path !== node.name) listUnder(this.byLastNames, lastNames(node.path), node);
    }
  }

  at(path: string): TreeNode | undefined {
    return this.byPath.get(path);
  }

  /** Every thing of the tree, in the order of definition; assemblies without a block come last. */
  nodes(): IterableIterator<TreeNode> {
    return this.byPath.values();
  }

  /** In the order of definition; the same list each time. */
  ofKind(kind: TreeKind): readonly TreeNode[] {
    return this.byKind.get(kind) ?? NONE;
  }

  /** The things whose path is this or ends in it. */
  withTail(tail: string): readonly TreeNode[] {
    if (!tail.includes(".")) return this.byLastName.get(tail) ?? [];
    const names = lastNames(tail);
    const alike = this.byLastNames.get(names) ?? [];
    if (names === tail) return alike;
    const ending = `.${tail}`;
    return alike.filter(({ path }) => path === tail || path.endsWith(ending));
  }

  /** The last names of all paths. */
  lastNames(): Iterable<string> {
    return this.byLastName.keys();
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
      name: lastName(path),
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

/** The last of a path's names. */
function lastName(path: string): string {
  return path.slice(path.lastIndexOf(".") + 1);
}

/** The last two of a path's names. */
function lastNames(path: string): string {
  const last = path.lastIndexOf(".");
  return path.slice(path.lastIndexOf(".", last - 1) + 1);
}

const NONE: readonly TreeNode[] = [];

const NO_BLOCK: Vehicle = { title: undefined, header: undefined, records: [], lost: [] };
