/** A log cut into what is merged as one: a block, with the comments that stand above its header. */
import { Document } from "../../../grammar/document.ts";
import type { BlockNode } from "../../../grammar/syntax.ts";

export interface Piece {
  /** What it defines or which day it is, and the how manieth of these it is. */
  readonly key: string;
  /** Of a day. */
  readonly date: string | undefined;
  /** Without the blank lines behind it. */
  readonly text: string;
  /** The blank lines behind it; undefined of the last piece. */
  readonly gap: string | undefined;
}

/** @param text with line feeds alone, without a byte order mark */
export function piecesOf(text: string): readonly Piece[] {
  const { blocks } = Document.read(text);
  const seen = new Map<string, number>();
  let lead = "";
  return blocks.map((block, index) => {
    const isLast = index === blocks.length - 1;
    const { body, gap, next } = cut(block, isLast);
    const name = nameOf(block);
    const count = seen.get(name) ?? 0;
    seen.set(name, count + 1);
    const piece = {
      key: `${name} ${count}`,
      date: dateOf(block),
      text: lead + body,
      gap: isLast ? undefined : gap,
    };
    lead = next;
    return piece;
  });
}

/** Comments in column 0 at the end of a block stand above the next one. */
function cut({ text, header }: BlockNode, isLast: boolean) {
  const lines = text.split("\n");
  const lastSaid = lines.findLastIndex((line) => line.trim() !== "" && !line.startsWith("#"));
  const firstComment = lines.findIndex((line, index) => index > lastSaid && line.startsWith("#"));
  const ofNext = !isLast && header !== undefined && firstComment >= 0 ? firstComment : lines.length;
  const own = lines.slice(0, ofNext);
  const end = own.findLastIndex((line) => line.trim() !== "") + 1;
  const blank = Math.max(0, own.length - end - (ofNext === lines.length ? 1 : 0));
  return {
    body: own.slice(0, end).join("\n"),
    gap: "\n".repeat(blank),
    next: lines.slice(ofNext).join("\n"),
  };
}

function nameOf({ header, text }: BlockNode): string {
  if (header === undefined) return "head";
  const argument = header.values.get("name") ?? header.values.get("date") ?? header.values.get("title");
  const said = argument === undefined ? text.split("\n")[0] : text.slice(argument.start, argument.end);
  return `${header.block ?? header.word.text} ${said}`;
}

function dateOf({ header }: BlockNode): string | undefined {
  const date = header?.values.get("date");
  return date?.kind === "date" ? date.text : undefined;
}
