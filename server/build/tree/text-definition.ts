import type { WordNode } from "../../../grammar/syntax.ts";
import type { BlockSite, Place } from "../source.ts";
import type { SourcedRecord, TreeKind } from "./node.ts";

/** A block of the tree as written, before paths are joined to a tree. */
export interface TextDefinition {
  readonly path: string;
  readonly kind: Exclude<TreeKind, "vehicle">;
  readonly title: string | undefined;
  readonly site: BlockSite;
  readonly header: Place;
  readonly like: WordNode | undefined;
  readonly copyOf: string | undefined;
  readonly records: readonly SourcedRecord[];
  readonly lost: readonly Place[];
}
