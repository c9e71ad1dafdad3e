/** What has to be remembered of a diary to know where its work can hurt. */
import type { CautionKind } from "./cautions.ts";
import type { BlockSite } from "./source.ts";
import type { TreeNode } from "./tree/node.ts";

export class CareMemory {
  /** How each part was cleaned or coated last. */
  readonly faces = new Map<TreeNode, "blasted" | "painted" | "cleaned">();
  /** Parts that were cleaned with solvent and not fitted since. */
  readonly solvent = new Set<TreeNode>();
  hasRun = false;
  private day: BlockSite | undefined;
  private shown = new Set<CautionKind>();

  /** The cautions that were shown in a day block; the blocks are read one after the other. */
  shownIn(day: BlockSite): Set<CautionKind> {
    if (this.day !== day) this.shown = new Set();
    this.day = day;
    return this.shown;
  }

  /** The same, to be gone on with by itself. */
  copy(): CareMemory {
    const copy = new CareMemory();
    for (const [node, face] of this.faces) copy.faces.set(node, face);
    for (const node of this.solvent) copy.solvent.add(node);
    copy.hasRun = this.hasRun;
    return copy;
  }
}
