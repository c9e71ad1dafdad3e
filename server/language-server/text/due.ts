/**
 * What may be written at a cursor: worked out by reading what stands before it, by the shapes that the vocabulary gives
 * to the line. The same goes for a line that is half written and for one that is complete.
 */
import { contentOf, opensString } from "../../../grammar/lines.ts";
import { readStatement } from "../../../grammar/statement.ts";
import type {
  BlockNode,
  BlockWord,
  HeaderNode,
  RecordNode,
  Span,
  ValueNode,
} from "../../../grammar/syntax.ts";
import type {
  ArgumentShape,
  BlockEntry,
  Clause,
  RecordEntry,
  Shape,
} from "../../../grammar/vocabulary/shape.ts";
import { TREE_KINDS } from "../../../grammar/vocabulary/shape.ts";
import { entriesIn } from "../../../grammar/vocabulary/vocabulary.ts";
import { entryOf, itemAt } from "./statement-at.ts";

/** A value that may come next, or the words that introduce one. */
export type Due =
  | { readonly is: "value"; readonly role: string; readonly shape: Exclude<Shape, { value: "either" }> }
  | { readonly is: "words"; readonly text: string; readonly clause: Clause };

export type Values = ReadonlyMap<string, ValueNode>;

/** Where a cursor stands; `partial` is the word under way, from its start to the cursor. */
export type CursorPlace = { readonly partial: Span } & (
  | { readonly is: "block word" }
  | { readonly is: "record word"; readonly block: BlockWord | undefined }
  /** The code behind `# waived`, on a header or record. */
  | { readonly is: "waiver"; readonly statement: HeaderNode | RecordNode }
  | ({ readonly is: "value" } & ValuePlace)
  /** Within quotation marks. */
  | ({ readonly is: "text" } & ValuePlace)
);

export interface ValuePlace {
  readonly statement: HeaderNode | RecordNode;
  /** What the vocabulary says of the line; of `changed:` and `default:`, of the record within. */
  readonly entry: ArgumentShape & { readonly word: string };
  /** What was read of the line before the cursor. */
  readonly values: Values;
  readonly due: readonly Due[];
  /** True directly behind a number: what is due is its unit. */
  readonly behindNumber: boolean;
  /** What stands between the word of the line and the word under way. */
  readonly before: string;
}

const WORD_UNDER_WAY = /^[A-Za-z_][A-Za-z0-9_]*$/;

export function cursorPlace(block: BlockNode, offset: number): CursorPlace | undefined {
  const statement = statementOf(block, offset);
  if (statement === undefined) return newLine(block, offset);
  if (offset <= statement.word.end && offset >= statement.word.start)
    return wordPlace(block, statement, { start: statement.word.start, end: offset });
  const entry = entryOf(block, statement);
  const start = statement.word.end + (statement.kind === "record" ? 1 : 0);
  if (offset < start) return undefined;
  const waiver = waiverAt(block, statement, offset);
  if (waiver !== undefined) return waiver;
  if (entry === undefined || contentOf(block.text, start, offset).comment !== undefined) return undefined;
  return valuePlace(statement, entry, block.text.slice(start, offset), start);
}

/** The statement that the cursor goes on with: also on the line below one that ends in a comma. */
function statementOf(block: BlockNode, offset: number): HeaderNode | RecordNode | undefined {
  const item = itemAt(block, offset);
  if (item === undefined) return undefined;
  if (item.kind === "header" || item.kind === "record") return item;
  if (item.kind !== "blank" && item.kind !== "prose") return undefined;
  const before = block.items[block.items.indexOf(item) - 1];
  const indented = /^[ \t]+$/.test(block.text.slice(item.start, Math.min(offset, item.start + 1)));
  if (before?.kind !== "record" || !indented) return undefined;
  return contentOf(block.text, before.word.end + 1, before.contentEnd).asksForMore ? before : undefined;
}

/** A line that is no statement yet: its first word may become one. */
function newLine(block: BlockNode, offset: number): CursorPlace | undefined {
  const lineStart = block.lineStarts.findLast((start) => start <= offset) ?? 0;
  const written = block.text.slice(lineStart, offset);
  const word = written.trimStart();
  if (word !== "" && !WORD_UNDER_WAY.test(word)) return undefined;
  const partial = { start: offset - word.length, end: offset };
  if (word.length === written.length) return { is: "block word", partial };
  return { is: "record word", block: block.header?.block, partial };
}

function wordPlace(
  block: BlockNode,
  statement: HeaderNode | RecordNode,
  partial: Span,
): CursorPlace | undefined {
  if (statement.kind === "header") return { is: "block word", partial };
  return { is: "record word", block: block.header?.block, partial };
}

const WAIVER_UNDER_WAY = /#\s+waived\s+([a-z0-9-]*)$/;

function waiverAt(
  block: BlockNode,
  statement: HeaderNode | RecordNode,
  offset: number,
): CursorPlace | undefined {
  const code = WAIVER_UNDER_WAY.exec(block.text.slice(statement.start, offset))?.[1];
  if (code === undefined) return undefined;
  return { is: "waiver", statement, partial: { start: offset - code.length, end: offset } };
}

/**
 * As far back as is looked for what is under way (characters): no number, unit or path is longer, and the patterns
 * take time in the square of what they look through.
 */
const LONGEST_UNDER_WAY = 1000;
const PATH_UNDER_WAY = /(?:[A-Za-z_*][A-Za-z0-9_.*]*)?(?:\{[^{}"]*)?$/;
const UNIT_UNDER_WAY =
  /(?:^|[\s,(±=]|\.\.)[-+\u2212]?\d[\d./]*(?:\s+|(?=[A-Za-zµμ°%']))([A-Za-zµμΩ°%'][\w.·/^µμΩ°%']*)?$/;

function valuePlace(
  statement: HeaderNode | RecordNode,
  entry: BlockEntry | RecordEntry,
  written: string,
  start: number,
): CursorPlace {
  const text = written.replaceAll(/[\r\n]/g, " ");
  const opened = openString(text);
  const end = start + text.length;
  if (opened !== undefined) {
    const partial = { start: start + opened + 1, end };
    return {
      is: "text",
      statement,
      partial,
      behindNumber: false,
      ...dueBehind(entry, text.slice(0, opened)),
    };
  }
  const tail = text.slice(-LONGEST_UNDER_WAY);
  const unit = UNIT_UNDER_WAY.exec(tail);
  const unitText = unit?.[1] ?? "";
  if (unit !== null) {
    const number = text.length - tail.length + unit.index + unit[0].search(/[-+\u2212\d]/);
    const partial = { start: end - unitText.length, end };
    return {
      is: "value",
      statement,
      partial,
      behindNumber: true,
      ...dueBehind(entry, text.slice(0, number)),
    };
  }
  const path = PATH_UNDER_WAY.exec(tail)?.[0] ?? "";
  const partial = { start: end - path.length, end };
  return {
    is: "value",
    statement,
    partial,
    behindNumber: false,
    ...dueBehind(entry, text.slice(0, text.length - path.length)),
  };
}

/** Where a string that the end of a text still stands in was opened. */
function openString(text: string): number | undefined {
  let opened: number | undefined;
  for (let at = 0; at < text.length; at++) {
    const character = text.charAt(at);
    if (opened !== undefined && character === "\\") at++;
    else if (character === '"') {
      if (opened !== undefined) opened = undefined;
      else if (opensString(text, at)) opened = at;
    }
  }
  return opened;
}

type Behind = Pick<ValuePlace, "entry" | "values" | "due" | "before">;

function dueBehind(entry: ArgumentShape & { readonly word: string }, head: string): Behind {
  const within = recordWithin(entry, head);
  if (within !== undefined) return dueBehind(within.entry, within.head);
  const { values } = readStatement(entry, head, 0);
  const due = expanded([...dueIn(entry, head, values)]);
  return { entry, values, due, before: head };
}

const CHANGEABLE: ReadonlyMap<string, RecordEntry> = new Map(
  TREE_KINDS.flatMap((block) => entriesIn(block).map((entry) => [entry.word, entry] as const)),
);

/** The records that `changed:` and `default:` can hold. */
export const changeableWords: readonly RecordEntry[] = [...CHANGEABLE.values()];

/** Of `changed: REF WORD …` and `default: WORD …` the record within, and what is written of it. */
function recordWithin(
  entry: ArgumentShape,
  head: string,
): { readonly entry: RecordEntry; readonly head: string } | undefined {
  if (!entry.elements.some(({ shape }) => shape.value === "definition")) return undefined;
  // White space is taken whole, by `(?=\S)`: else a lot of it takes time in the square of its length.
  const pattern =
    entry.elements.length === 1 ? /^\s*([a-z_]+)\s/ : /^\s*(?=\S)[^\s{]*(?:\{[^}]*\}\S*)?\s+([a-z_]+)\s/;
  const match = pattern.exec(head);
  const inner = CHANGEABLE.get(match?.[1] ?? "");
  return match === null || inner === undefined
    ? undefined
    : { entry: inner, head: head.slice(match[0].length) };
}

function* dueIn(
  entry: ArgumentShape,
  head: string,
  values: Values,
): Generator<Due | { shape: Shape; role: string }> {
  const { elements, clauses } = entry;
  const introduced = introducedBy(clauses, head);
  if (introduced.length > 0) {
    yield* introduced;
    return;
  }
  if (/\bat\s*$/.test(head) && elements.some(({ shape }) => "priced" in shape)) {
    yield { role: "at", shape: { value: "money" } };
    return;
  }
  if (/,\s*$/.test(head)) {
    const last = [...values].sort(([, a], [, b]) => b.end - a.end)[0]?.[0];
    const listed = [...elements, ...clauses].find(({ role }) => role === last);
    if (listed?.shape !== undefined) yield { role: listed.role, shape: listed.shape };
    return;
  }
  for (const { role, shape, optional } of elements) {
    if (values.has(role)) continue;
    yield { role, shape };
    if (optional !== true) return;
  }
  for (const clause of clauses) {
    const taken = clauses.some(
      (other) =>
        values.has(other.role) &&
        (other === clause || (other.insteadOf !== undefined && other.insteadOf === clause.insteadOf)),
    );
    if (!taken) yield { is: "words", text: clause.words.join(" "), clause };
  }
}

/** What the words at the end of a line introduce: a clause's value, or the rest of its words. */
function introducedBy(clauses: readonly Clause[], head: string): (Due | { shape: Shape; role: string })[] {
  const words = head.split(/[\s,]+/).filter((word) => word !== "");
  return clauses.flatMap((clause): (Due | { shape: Shape; role: string })[] => {
    for (let count = clause.words.length; count > 0; count--) {
      const said = clause.words.slice(0, count);
      if (words.slice(-count).join(" ") !== said.join(" ")) continue;
      const rest = clause.words.slice(count).join(" ");
      if (rest !== "") return [{ is: "words", text: rest, clause }];
      return clause.shape === undefined ? [] : [{ role: clause.role, shape: clause.shape }];
    }
    return [];
  });
}

function expanded(due: readonly (Due | { readonly shape: Shape; readonly role: string })[]): readonly Due[] {
  return due.flatMap((one): Due[] => {
    if ("is" in one) return [one];
    const { role, shape } = one;
    return shape.value === "either"
      ? [...expanded(shape.options.map((option) => ({ role, shape: option })))]
      : [{ is: "value", role, shape }];
  });
}
