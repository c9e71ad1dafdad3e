/**
 * What every build makes of the lines of a text, made as soon as it is read: the lines are then let go of, before the next
 * text is read, and are young enough to cost the collector of memory nothing.
 */
import type { Document } from "../../grammar/document.ts";
import { extentsIn } from "./lost-lines.ts";
import { lowerBlock } from "./lowering/block.ts";
import { referenceUses } from "./reference-uses.ts";

/** For a text that nobody has open: who asks for its lines later has them read again. */
export function readAhead(document: Document): void {
  for (const block of document.blocks) {
    referenceUses(block);
    if (lowerBlock(block).faults.length > 0) extentsIn(block);
  }
  document.forgetLines();
}
