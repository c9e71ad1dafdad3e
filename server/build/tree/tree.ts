/** The tree of the vehicle: parts, joints, systems and circuits under their assemblies. */

import { listUnder } from "../list-under.ts";
import { isSame } from "../remembered.ts";
import type { BlockSite, Place } from "../source.ts";
import type { SourcedRecord, TreeKind, TreeNode } from "./node.ts";
import type { TextDefinition } from "./text-definition.ts";
import type { Statement } from "./written.ts";

export interface Vehicle extends Statement {
  readonly title: string | undefined;
  readonly header: Place | undefined;
}

interface GrowingNode extends TreeNode {
  parent: TreeNode | undefined;
  children: GrowingNode[];
}

/** The path of the whole. */
export const ROOT = "vehicle";

export class Tree {
  readonly root: TreeNode;
  /** So many things have a block, the first of all; assemblies without one come last. */
  private readonly blocks: number;
  private readonly byPath = new Map<string, GrowingNode>();
  private readonly byKind = new Map<TreeKind, TreeNode[]>();
  /** Every thing, as `nodes()` has them. */
  readonly all: readonly TreeNode[];
  /** Everything but the parts: what is measured of it is no item's. */
  readonly besideParts: readonly TreeNode[];
  private readonly byLastName = new Map<string, TreeNode[]>();
  /** By the last two names: of the last alone there may be one in every corner of the vehicle. */
  private readonly byLastNames = new Map<string, TreeNode[]>();

  /** @param definitions each of another path, none of which is `vehicle` */
  constructor(vehicle: Vehicle, definitions: readonly TextDefinition[]) {
    this.root = this.node(ROOT, "vehicle", vehicle, undefined);
    for (const definition of definitions)
      this.node(definition.path, definition.kind, definition, definition.copyOf);
    this.blocks = this.byPath.size;
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

  /** Whether definitions are of these things, whatever they say of them. */
  isOf(definitions: readonly TextDefinition[]): boolean {
    if (definitions.length + 1 !== this.blocks) return false;
    return definitions.every((definition, index) => isOf(this.all[index + 1] as TreeNode, definition));
  }

  /** The last names of all paths. */
  lastNames(): Iterable<string> {
    return this.byLastName.keys();
  }

  private node(
    path: string,
    kind: TreeKind,
    { title, header, records }: Vehicle,
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
      sources: sourcesOf(records, header),
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
      const parentPath = dot < 0 ? ROOT : child.path.slice(0, dot);
      const parent = this.byPath.get(parentPath) ?? this.node(parentPath, "assembly", NO_BLOCK, undefined);
      child.parent = parent;
      parent.children.push(child);
      child = parent;
    }
  }
}

function isOf(node: TreeNode, definition: TextDefinition): boolean {
  const { path, kind, title, header, copyOf, records } = definition;
  return (
    node.path === path &&
    node.kind === kind &&
    node.title === title &&
    node.copyOf === copyOf &&
    node.header !== undefined &&
    isSamePlace(node.header, header) &&
    isSame(node.sources, sourcesOf(records, header))
  );
}

/** The blocks that records were copied from. */
function sourcesOf(records: readonly SourcedRecord[], header: Place | undefined): readonly BlockSite[] {
  const others = records.flatMap(({ site }) => (site === header?.site ? [] : [site]));
  return others.length === 0 ? NO_SITES : [...new Set(others)];
}

function isSamePlace(one: Place, other: Place): boolean {
  return one.site === other.site && one.start === other.start && one.end === other.end;
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
const NO_SITES: readonly BlockSite[] = [];

const NO_BLOCK: Vehicle = { title: undefined, header: undefined, records: [], lost: [] };
