/** Short forms to write the entries of records and facts with. */
import type { BlockWord } from "../syntax.ts";
import type { BadExample, Clause, Element, RecordEntry, Shape } from "./shape.ts";
import { clause, element, string } from "./shape.ts";

interface Text {
  readonly help: string;
  readonly example: string;
  readonly bad: string;
  readonly code: BadExample["code"];
  readonly clauses?: readonly Clause[];
  readonly choice?: string;
}

/** Who did it: every fact may say so. */
export const BY: Clause = clause("by", "by", string);

/** A record of a definition block; a single shape stands for one element, its `value`. */
export function record(
  blocks: BlockWord | readonly BlockWord[],
  word: string,
  elements: Shape | readonly Element[],
  text: Text & { readonly repeats?: true },
): RecordEntry {
  return {
    word,
    blocks: typeof blocks === "string" ? [blocks] : blocks,
    elements: "value" in elements ? [element("value", elements)] : elements,
    clauses: text.clauses ?? [],
    note: false,
    repeats: text.repeats ?? false,
    ...described(text),
  };
}

/** A fact of a day; `by` behind it and a note at its end are understood. */
export function fact(
  word: string,
  elements: readonly Element[],
  text: Text & { readonly note?: "required" },
): RecordEntry {
  const clauses = text.clauses ?? [];
  return {
    word,
    blocks: ["day"],
    elements,
    clauses: clauses.some(({ role }) => role === BY.role) ? clauses : [...clauses, BY],
    note: text.note ?? true,
    repeats: true,
    ...described(text),
  };
}

function described({ help, example, bad, code, choice }: Text) {
  return { help, example, bad: { text: bad, code }, ...(choice === undefined ? {} : { choice }) };
}
