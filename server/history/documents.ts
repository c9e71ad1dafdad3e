/**
 * The texts of many revisions as documents: a block whose text a file had before keeps its tree, and with that all that
 * was read from it, so that a revision costs no more than what it changed.
 */
import { Document } from "../../grammar/document.ts";

export class Documents {
  private readonly newest = new Map<string, Document>();

  /** The text of a file, of any revision, in any order. */
  read(path: string, text: string): Document {
    const before = this.newest.get(path);
    const document = before === undefined ? Document.read(text) : before.edit(0, before.length, text);
    this.newest.set(path, document);
    return document;
  }
}
