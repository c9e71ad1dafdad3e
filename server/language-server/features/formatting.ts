/** The canonical layout, of a file, of some lines of it, or of the line that has just been ended. */
import type { Range, TextEdit } from "vscode-languageserver";
import type { Document, Position } from "../../../grammar/document.ts";
import { layoutEdits } from "../../../grammar/printer.ts";

export function formatted(document: Document): TextEdit[] {
  return layoutEdits(document).map(({ start, end, text }) => ({
    range: { start: document.positionAt(start), end: document.positionAt(end) },
    newText: text,
  }));
}

/** The edits within the lines of a range. */
export function formattedRange(document: Document, { start, end }: Range): TextEdit[] {
  const last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
  return formatted(document).filter(({ range }) => range.start.line >= start.line && range.end.line <= last);
}

/** What the line above wants, now that a line end was typed behind it. */
export function formattedBehind(document: Document, { line }: Position): TextEdit[] {
  return line === 0
    ? []
    : formatted(document).filter(({ range }) => range.start.line === line - 1 && range.end.line === line - 1);
}
