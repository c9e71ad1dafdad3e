/** Writes a new block behind another one, as a form to fill in. */
import type { SnippetString } from "vscode";
import { Position } from "vscode";
import type { Spot } from "../../server/language-server/protocol.ts";
import { goTo } from "../go-to.ts";
import type { ShownBuild } from "../shown-build.ts";

/** @param end the end of the line behind which it belongs; an empty file takes it as its first */
export async function insertBlock(shown: ShownBuild, end: Spot, block: SnippetString): Promise<void> {
  const editor = await goTo(shown, end);
  const isFirst = end.line === 0 && end.character === 0;
  const parted = isFirst ? block.value : `\n\n${block.value}`;
  block.value = parted;
  // The block begins in the first column, wherever the line before it does.
  await editor.insertSnippet(block, new Position(end.line, end.character), {
    undoStopBefore: true,
    undoStopAfter: true,
    keepWhitespace: true,
  });
}
