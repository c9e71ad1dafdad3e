/** Files that move keep the photos of a log: the paths in `photo:` lines are relative to the build's folder. */
import type { TextEdit } from "vscode-languageserver";
import type { SourceFile } from "../../build/source.ts";
import { hasVehicle } from "../../workspace/build-folders.ts";
import type { BuildSnapshot } from "../../workspace/build-snapshot.ts";
import { folderOf, isBelow, relativeTo } from "../../workspace/file-store.ts";
import { rangeIn } from "../to-protocol.ts";
import { decoded, uriWithin } from "../uri.ts";

/** A file or folder by its URIs, in their normal form. */
export interface Move {
  readonly from: string;
  readonly to: string;
}

/** The edits that a build's logs need when files have moved: places are those before the move. */
export function photosMoved(
  { folder, logs }: BuildSnapshot,
  moves: readonly Move[],
): ReadonlyMap<SourceFile, readonly TextEdit[]> {
  const head = logs.find(({ file }) => hasVehicle(file.document));
  const newFolder = head === undefined ? folder : folderOf(moved(head.path, moves));
  const edits = new Map<SourceFile, TextEdit[]>();
  for (const { file } of logs) {
    const { document } = file;
    const inFile = document.blocks.flatMap((block, index) =>
      block.items.flatMap((item): TextEdit[] => {
        const path =
          item.kind === "record" && item.word.text === "photo" ? item.values.get("path") : undefined;
        if (path?.kind !== "string" || !path.closed) return [];
        const target = moved(uriWithin(folder, path.text), moves);
        if (!isBelow(newFolder, target)) return [];
        const newText = relativeTo(newFolder, target).split("/").map(decoded).join("/");
        if (newText === path.text || newText.includes('"') || newText.includes("\\")) return [];
        return [{ range: rangeIn(document, index, { start: path.start + 1, end: path.end - 1 }), newText }];
      }),
    );
    if (inFile.length > 0) edits.set(file, inFile);
  }
  return edits;
}

function moved(uri: string, moves: readonly Move[]): string {
  const move = moves.find(({ from }) => isBelow(from, uri));
  return move === undefined ? uri : move.to + uri.slice(move.from.length);
}
