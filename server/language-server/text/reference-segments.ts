/** The names within a reference, each with its place: `front.left.{disc, hub}` holds four. */
import type { ReferenceNode, Span } from "../../../grammar/syntax.ts";

/** A name or `*` of a reference. */
export interface ReferenceName extends Span {
  readonly text: string;
}

/** One plain path that a reference stands for, as the names that spell it. */
export type SpelledPath = readonly ReferenceName[];

/** Choices within choices multiply; no honest reference means more things than this. */
const MOST_PATHS = 1000;

const PIECE = /\{[^}]*\}?|\*|[A-Za-z][A-Za-z0-9_]*/g;
const NAME = /\*|[A-Za-z][A-Za-z0-9_]*/g;
const OPTION = /[^,{}]+/g;

/** Every path that a reference stands for. */
export function spelledPaths({ text, start }: Pick<ReferenceNode, "text" | "start">): readonly SpelledPath[] {
  let paths: SpelledPath[] = [[]];
  for (const piece of text.matchAll(PIECE)) {
    const at = start + piece.index;
    const options = piece[0].startsWith("{") ? optionsIn(piece[0], at) : [namesIn(piece[0], at)];
    paths = paths.flatMap((path) => options.map((option) => [...path, ...option])).slice(0, MOST_PATHS);
  }
  return paths;
}

function optionsIn(text: string, start: number): SpelledPath[] {
  return [...text.matchAll(OPTION)]
    .map((option) => namesIn(option[0], start + option.index))
    .filter((names) => names.length > 0);
}

function namesIn(text: string, start: number): SpelledPath {
  return [...text.matchAll(NAME)].map((name) => {
    const at = start + name.index;
    return { text: name[0], start: at, end: at + name[0].length };
  });
}
