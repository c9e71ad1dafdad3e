/**
 * A build from literal text, for the features: `⁞` marks the cursor. Several files are told apart by lines
 * `=== path`; without one there is a single file.
 */
import type { Range, TextEdit } from "vscode-languageserver";
import type { Position } from "../../grammar/document.ts";
import { Document } from "../../grammar/document.ts";
import { FileView } from "../../server/language-server/view.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import type { Log } from "../../server/workspace/build-snapshot.ts";
import { BuildSnapshot } from "../../server/workspace/build-snapshot.ts";

const MARK = "⁞";
const TODAY = "2026-06-01" as IsoDate;

export interface MarkedBuild {
  readonly snapshot: BuildSnapshot;
  /** The file with the mark; the first one where there is none. */
  readonly view: FileView;
  /** Where the marks stood in that file. */
  readonly positions: readonly Position[];
  readonly position: Position;
  /** The text of the file with the mark taken out. */
  readonly text: string;
  readonly viewOf: (path: string) => FileView;
}

const FOLDER = "file:///garage/sprint";

/** @param text lines may be indented as the test is: the indent of the first line is taken off all */
export function marked(text: string): MarkedBuild {
  const files = divided(undented(text));
  const read = [...files].map(([path, content]) => {
    const { plain, positions } = withoutMarks(content);
    const log: Log = {
      path: `${FOLDER}/${path}`,
      version: 1,
      file: { path, document: Document.read(plain) },
    };
    return { log, positions };
  });
  const snapshot = new BuildSnapshot(
    FOLDER,
    true,
    read.map(({ log }) => log),
    { clock: TODAY, overrides: new Map() },
  );
  const chosen = read.find(({ positions }) => positions.length > 0) ?? read[0];
  if (chosen === undefined) throw new Error("no file");
  const viewOf = (path: string) => {
    const log = snapshot.log(`${FOLDER}/${path}`);
    if (log === undefined) throw new Error(`no file ${path}`);
    return new FileView(snapshot, log);
  };
  const [position = { line: 0, character: 0 }] = chosen.positions;
  return {
    snapshot,
    view: new FileView(snapshot, chosen.log),
    positions: chosen.positions,
    position,
    text: chosen.log.file.document.text,
    viewOf,
  };
}

function divided(text: string): ReadonlyMap<string, string> {
  if (!text.startsWith("=== ")) return new Map([["log.cotter", text]]);
  const parts = text.split(/^=== (.*)\n/m).slice(1);
  const files = new Map<string, string>();
  for (let index = 0; index < parts.length; index += 2)
    files.set((parts[index] ?? "").trim(), parts[index + 1] ?? "");
  return files;
}

function withoutMarks(content: string): { plain: string; positions: Position[] } {
  const positions: Position[] = [];
  let plain = "";
  for (const [index, piece] of content.split(MARK).entries()) {
    if (index > 0) {
      const before = plain.split("\n");
      positions.push({ line: before.length - 1, character: (before.at(-1) ?? "").length });
    }
    plain += piece;
  }
  return { plain, positions };
}

/** A range as a reader sees it: the file, the line counted from 1, and the text. */
export function seen({ viewOf }: MarkedBuild, uri: string, range: Range): string {
  const path = uri.slice(FOLDER.length + 1);
  const { document } = viewOf(path);
  const text = document.text.slice(document.offsetAt(range.start), document.offsetAt(range.end));
  return `${path}:${range.start.line + 1} ${text.split("\n")[0]}`;
}

/** A text with edits carried out. */
export function edited(text: string, edits: readonly TextEdit[]): string {
  const document = Document.read(text);
  const inOrder = [...edits].sort(
    (a, b) => document.offsetAt(b.range.start) - document.offsetAt(a.range.start),
  );
  return inOrder.reduce(
    (result, { range, newText }) =>
      result.slice(0, document.offsetAt(range.start)) + newText + result.slice(document.offsetAt(range.end)),
    text,
  );
}

/** Takes the first line's indent off every line, and the line break that opens a template string. */
export function undented(text: string): string {
  const lines = text
    .replace(/^\n/, "")
    .replace(/\n[ ]*$/, "\n")
    .split("\n");
  const indent = /^ */.exec(lines[0] ?? "")?.[0].length ?? 0;
  return lines.map((line) => (line.slice(0, indent).trim() === "" ? line.slice(indent) : line)).join("\n");
}
