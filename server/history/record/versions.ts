/** One file through many commits: each version is read as an edit of one before it, which costs what was edited. */
import { Document } from "../../../grammar/document.ts";

export interface Version {
  readonly document: Document;
  /** The text of the document, kept so that it need not be put together again. */
  readonly text: string;
}

const BYTE_ORDER_MARKS = /^\ufeff+/;

/** @param before a version of the same file, near in time */
export function versionAfter(before: Version | undefined, content: Buffer): Version {
  const text = content.toString("utf8").replace(BYTE_ORDER_MARKS, "");
  if (before === undefined) return { document: Document.read(text), text };
  const start = sameAtStart(before.text, text);
  const behind = sameAtEnd(before.text, text, start);
  const end = before.text.length - behind;
  const replacement = text.slice(start, text.length - behind);
  return { document: before.document.edit(start, end, replacement), text };
}

/** Long enough that comparing pieces costs little more than comparing memory. */
const PIECE = 4096;

function sameAtStart(one: string, other: string): number {
  const most = Math.min(one.length, other.length);
  let at = 0;
  while (at + PIECE <= most && one.slice(at, at + PIECE) === other.slice(at, at + PIECE)) at += PIECE;
  while (at < most && one.charCodeAt(at) === other.charCodeAt(at)) at++;
  return at;
}

/** @param start so many characters are the same at the start, and are not counted again */
function sameAtEnd(one: string, other: string, start: number): number {
  const most = Math.min(one.length, other.length) - start;
  const piece = (text: string, behind: number) =>
    text.slice(text.length - behind - PIECE, text.length - behind);
  let behind = 0;
  while (behind + PIECE <= most && piece(one, behind) === piece(other, behind)) behind += PIECE;
  const last = (text: string) => text.charCodeAt(text.length - behind - 1);
  while (behind < most && last(one) === last(other)) behind++;
  return behind;
}
