/**
 * The one table of the notation: every block, record and fact, once. Everything that knows words reads this:
 * parser, completion, hover, printer, the generated TextMate grammar and the reference pages.
 */
import type { BlockWord } from "../syntax.ts";
import { BLOCKS } from "./blocks.ts";
import { FACTS } from "./facts.ts";
import { RECORDS } from "./records.ts";
import type { BlockEntry, RecordEntry } from "./shape.ts";
import { element, newName } from "./shape.ts";

const ALL_BLOCKS: readonly BlockWord[] = BLOCKS.map(({ word }) => word);

/** `calc:` may stand in every block, definition or day. */
const CALC: RecordEntry = {
  word: "calc",
  blocks: ALL_BLOCKS,
  elements: [element("name", newName), element("expression", { value: "expression" })],
  clauses: [],
  note: false,
  repeats: true,
  help: "Computed in place; the name can be used from that day on.",
  example: "calc: wear = 9.5 mm - front.left.disc.thickness",
};

export const vocabulary: {
  readonly blocks: readonly BlockEntry[];
  readonly records: readonly RecordEntry[];
} = {
  blocks: BLOCKS,
  records: [...RECORDS, CALC, ...FACTS],
};

const blocksByWord = new Map(BLOCKS.map((entry) => [entry.word as string, entry]));

const recordsByBlock = new Map(
  ALL_BLOCKS.map((block) => [
    block,
    new Map(
      vocabulary.records.filter(({ blocks }) => blocks.includes(block)).map((entry) => [entry.word, entry]),
    ),
  ]),
);

/** Every word that can stand before a colon, in any block. */
export const recordWords: ReadonlySet<string> = new Set(vocabulary.records.map(({ word }) => word));

export function blockEntry(word: string): BlockEntry | undefined {
  return blocksByWord.get(word);
}

/** The entry of a record word in a block; undefined where that block does not take it. */
export function recordEntry(block: BlockWord, word: string): RecordEntry | undefined {
  return recordsByBlock.get(block)?.get(word);
}

/** Every entry of a word, for the places where the block does not decide (`changed:`, an unknown block). */
export function entriesOf(word: string): readonly RecordEntry[] {
  return vocabulary.records.filter((entry) => entry.word === word);
}

/** The entries that may stand in a block, in the order of the table. */
export function entriesIn(block: BlockWord): readonly RecordEntry[] {
  return [...(recordsByBlock.get(block)?.values() ?? [])];
}
