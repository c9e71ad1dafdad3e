/**
 * The one table of the notation: every block, record and fact, once. Everything that knows words reads this:
 * parser, completion, hover, printer, the generated TextMate grammar and the reference pages.
 */
import type { BlockWord } from "../syntax.ts";
import { BLOCKS } from "./blocks.ts";
import { BY } from "./entry.ts";
import { FACTS } from "./facts.ts";
import { RECORDS } from "./records.ts";
import type { BlockEntry, RecordEntry } from "./shape.ts";
import { element, newName } from "./shape.ts";

const ALL_BLOCKS: readonly BlockWord[] = BLOCKS.map(({ word }) => word);

const CALC = {
  word: "calc",
  elements: [element("name", newName), element("expression", { value: "expression" })],
  repeats: true,
} as const;

/** `calc:` may stand in every block; in a day it is a fact like others. */
const CALC_ENTRIES: readonly RecordEntry[] = [
  {
    ...CALC,
    blocks: ALL_BLOCKS.filter((block) => block !== "day"),
    clauses: [],
    note: false,
    help: "Computed as of today. In a block of the tree it is known as REF.NAME, and a limit of its name judges it.",
    example: "calc: reserve = front.left.disc.thickness - 8.4 mm",
    bad: { text: "calc: reserve = (front.left.disc.thickness - 8.4 mm", code: "unreadable-expression" },
  },
  {
    ...CALC,
    blocks: ["day"],
    clauses: [BY],
    note: true,
    help: "Computed in place; the name can be used from that day on, in the whole build.",
    example: "calc: wear = 9.5 mm - front.left.disc.thickness",
    bad: { text: "calc: wear 9.5 mm - front.left.disc.thickness", code: "unreadable-value" },
  },
];

export const vocabulary: {
  readonly blocks: readonly BlockEntry[];
  readonly records: readonly RecordEntry[];
} = {
  blocks: BLOCKS,
  records: [...RECORDS, ...CALC_ENTRIES, ...FACTS],
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
