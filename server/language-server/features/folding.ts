/** What can be folded: blocks, runs of prose, runs of comments, and records that go on over several lines. */
import type { FoldingRange } from "vscode-languageserver";
import { FoldingRangeKind } from "vscode-languageserver";
import type { Document } from "../../../grammar/document.ts";
import type { ItemNode } from "../../../grammar/syntax.ts";

export function foldingRanges(document: Document): FoldingRange[] {
  return document.blocks.flatMap((block, index) => {
    const first = document.lines[index] as number;
    const lineOf = (offset: number) => document.positionIn(index, offset).line;
    const said = block.items.findLast(({ kind }) => kind !== "blank" && kind !== "comment");
    const ranges: FoldingRange[] = [];
    if (block.header !== undefined && said !== undefined)
      add(ranges, first, lineOf(Math.max(said.end - 1, said.start)));
    for (const run of runsOf(block.items)) {
      const kind = run[0].kind === "comment" ? FoldingRangeKind.Comment : undefined;
      add(ranges, lineOf(run[0].start), lineOf((run.at(-1) as ItemNode).end - 1), kind);
    }
    return ranges;
  });
}

/** Lines of prose or of comments behind each other, and each record by itself. */
function runsOf(items: readonly ItemNode[]): [ItemNode, ...ItemNode[]][] {
  const runs: [ItemNode, ...ItemNode[]][] = [];
  let before: ItemNode | undefined;
  for (const item of items) {
    const isLine = item.kind === "prose" || item.kind === "comment";
    if (isLine && before?.kind === item.kind) runs.at(-1)?.push(item);
    else if (isLine || item.kind === "record") runs.push([item]);
    before = item;
  }
  return runs;
}

function add(ranges: FoldingRange[], startLine: number, endLine: number, kind?: FoldingRangeKind): void {
  if (endLine > startLine) ranges.push({ startLine, endLine, ...(kind === undefined ? {} : { kind }) });
}
