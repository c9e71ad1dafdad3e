/** What has to be remembered of a diary to know where its work can hurt. */
import type { CautionKind } from "./cautions.ts";
import { SharedTable } from "./replay/state-table.ts";
import type { BlockSite } from "./source.ts";
import type { TreeNode } from "./tree/node.ts";

export class CareMemory {
  /** How each part was cleaned or coated last. */
  readonly faces: SharedTable<TreeNode, "blasted" | "painted" | "cleaned">;
  /** Whether parts were cleaned with solvent and not fitted since. */
  readonly solvent: SharedTable<TreeNode, boolean>;
  hasRun: boolean;
  private day: BlockSite | undefined;
  private shown: Set<CautionKind>;

  constructor(before?: CareMemory) {
    this.faces = before?.faces.copy() ?? new SharedTable();
    this.solvent = before?.solvent.copy() ?? new SharedTable();
    this.hasRun = before?.hasRun ?? false;
    this.day = before?.day;
    this.shown = new Set(before?.shown);
  }

  /** The cautions that were shown in a day block; the blocks are read one after the other. */
  shownIn(day: BlockSite): Set<CautionKind> {
    if (this.day !== day) this.shown = new Set();
    this.day = day;
    return this.shown;
  }

  /** The same, to be gone on with by itself. */
  copy(): CareMemory {
    return new CareMemory(this);
  }
}
