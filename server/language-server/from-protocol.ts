/** From what the protocol carries to what the floors below speak of. */
import type { TextDocumentContentChangeEvent } from "vscode-languageserver";
import type { Document } from "../../grammar/document.ts";
import type { TextChange } from "../workspace/workspace.ts";

/** A change of a text, to be carried out on the document as the changes before it have left it. */
export function textChange(change: TextDocumentContentChangeEvent): (document: Document) => TextChange {
  if (!("range" in change)) return () => ({ text: change.text });
  const { range, text } = change;
  return (document) => ({ start: document.offsetAt(range.start), end: document.offsetAt(range.end), text });
}
