import type { DefinitionRecord, RecordWord } from "../lowering/definition-record.ts";
import type { BlockSite, Place } from "../source.ts";

export type TreeKind = "vehicle" | "assembly" | "part" | "joint" | "system" | "circuit";

/** A turn of references in a copied branch: what points into `from` points into `to`, and the other way round. */
export interface Turn {
  readonly from: string;
  readonly to: string;
}

/** A record with where it was written, and the turns that its references take because it was copied. */
export interface SourcedRecord<W extends RecordWord = RecordWord> {
  readonly record: DefinitionRecord<W>;
  readonly site: BlockSite;
  readonly turns: readonly Turn[];
}

/**
 * One thing of the vehicle's tree. An assembly without a block of its own has no `header`. It is the same object for as long
 * as the tree is; what is said of it is looked up in the definitions.
 */
export interface TreeNode {
  readonly path: string;
  /** The last name of its path. */
  readonly name: string;
  readonly kind: TreeKind;
  readonly title: string | undefined;
  readonly parent: TreeNode | undefined;
  readonly children: readonly TreeNode[];
  /** Where it is defined: its own header, or the header of the block that copied it. */
  readonly header: Place | undefined;
  /** The path that it was copied from. */
  readonly copyOf: string | undefined;
  /** The other blocks that its records were copied from. */
  readonly sources: readonly BlockSite[];
  /** The order of definition, for everything that is listed. */
  readonly order: number;
}

/** The path of a thing in words that lead to it: title and path. */
export function describeNode({ path, title }: TreeNode): string {
  return title === undefined ? path : `${title} (${path})`;
}

/** True for the thing itself and everything below it. */
export function isWithin(path: string, branch: string): boolean {
  return path === branch || (path.startsWith(branch) && path[branch.length] === ".");
}

/** Everything below a thing, in the order of definition, the thing itself left out. */
export function* below(node: TreeNode): Generator<TreeNode> {
  for (const child of node.children) {
    yield child;
    yield* below(child);
  }
}
