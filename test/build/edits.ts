/** Edits as they are drawn at random, the builds that they are made in, and how what comes of it is shown. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { Document } from "../../grammar/document.ts";
import type { Place, SourceFile } from "../../server/build/source.ts";
import type { LogRequest } from "../bench/generate-log.ts";
import { generateLog } from "../bench/generate-log.ts";

/** What people do to a log: letters come and go, lines and whole blocks are taken out, copied, and added at the end. */
export type Edit =
  | { readonly is: "type"; readonly at: number; readonly text: string }
  | { readonly is: "delete"; readonly at: number; readonly length: number }
  | { readonly is: "copy line" | "copy block"; readonly from: number; readonly to: number }
  | { readonly is: "append line"; readonly from: number }
  | { readonly is: "remove line" | "remove block"; readonly from: number };

/** Where in the text, as a share of it: drawn from even steps, since of doubles most lie close to nothing. */
export const share = fc.integer({ min: 0, max: 9999 }).map((step) => step / 10_000);
export const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({
    is: fc.constant("type" as const),
    at: share,
    text: fc.constantFrom("x", " ", "\n", "5", ".", "day 2026-10-03\n  ran: engine 1 h\n"),
  }),
  fc.record({ is: fc.constant("delete" as const), at: share, length: fc.integer({ min: 1, max: 3 }) }),
  fc.record({ is: fc.constantFrom("copy line" as const, "copy block" as const), from: share, to: share }),
  fc.record({ is: fc.constant("append line" as const), from: share }),
  fc.record({ is: fc.constantFrom("remove line" as const, "remove block" as const), from: share }),
);

export function carriedOut(document: Document, edit: Edit): Document {
  const { text } = document;
  const lines = text.split(/(?<=\n)/);
  const lineAt = (at: number) => Math.floor(at * lines.length);
  const startOf = (line: number) => lines.slice(0, line).join("").length;
  const blockAt = (at: number) => Math.floor(at * document.blocks.length);
  switch (edit.is) {
    case "type": {
      const at = Math.floor(edit.at * text.length);
      return document.edit(at, at, edit.text);
    }
    case "delete": {
      const at = Math.floor(edit.at * text.length);
      return document.edit(at, at + edit.length, "");
    }
    case "copy line": {
      const to = startOf(lineAt(edit.to));
      return document.edit(to, to, lines[lineAt(edit.from)] ?? "");
    }
    case "copy block": {
      const to = document.offsets[blockAt(edit.to)] ?? 0;
      return document.edit(to, to, document.blocks[blockAt(edit.from)]?.text ?? "");
    }
    case "append line":
      return document.edit(text.length, text.length, lines[lineAt(edit.from)] ?? "");
    case "remove line": {
      const start = startOf(lineAt(edit.from));
      return document.edit(start, start + (lines[lineAt(edit.from)]?.length ?? 0), "");
    }
    case "remove block": {
      const start = document.offsets[blockAt(edit.from)] ?? 0;
      return document.edit(start, start + (document.blocks[blockAt(edit.from)]?.text.length ?? 0), "");
    }
  }
}

export function generated(request: LogRequest): SourceFile[] {
  return generateLog(request).map(({ path, text }) => ({ path, document: Document.read(text) }));
}

export function roadster(): SourceFile[] {
  const parts = ["brakes", "electrics", "engine", "frame", "front", "rear"].map(
    (name) => `parts/${name}.cotter`,
  );
  const diary = ["08", "09", "10", "11"].map((month) => `diary/2026-${month}.cotter`);
  const names = ["vehicle.cotter", ...parts, ...diary];
  return names.map((path) => {
    const file = fileURLToPath(new URL(`../../samples/roadster/${path}`, import.meta.url));
    return { path, document: Document.read(readFileSync(file, "utf8")) };
  });
}

/** The files as if they were opened for the first time. */
export function readAgain(files: readonly SourceFile[]): SourceFile[] {
  return files.map(({ path, document }) => ({ path, document: Document.read(document.text) }));
}

/** Where something stands, by its line. */
export function spot({ site, start, end }: Place): string {
  const { line, character } = site.file.document.positionIn(site.index, start);
  return `${site.file.path}:${line}:${character}+${end - start}`;
}
