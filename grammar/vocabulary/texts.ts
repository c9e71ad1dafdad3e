/**
 * What is told of each block, record and fact, in the order of the vocabulary. It is told when it is looked up, so the
 * programs load it late: the build takes these texts out of the entries and writes them down here.
 */
import type { BlockEntry, RecordEntry } from "./shape.ts";
import { vocabulary } from "./vocabulary.ts";

export type EntryTexts = Pick<BlockEntry | RecordEntry, "help" | "example" | "choice">;

export const entryTexts: readonly EntryTexts[] = [...vocabulary.blocks, ...vocabulary.records].map(
  ({ help, example, choice }) => ({ help, example, ...(choice === undefined ? {} : { choice }) }),
);
