import type { ArgumentShape } from "./shape.ts";
import type { EntryTexts } from "./texts.ts";
import { entryTexts } from "./texts.ts";
import { vocabulary } from "./vocabulary.ts";

const entries: readonly ArgumentShape[] = [...vocabulary.blocks, ...vocabulary.records];
const NONE: EntryTexts = { help: "", example: "" };

/** What is told of an entry of the vocabulary; of another shape nothing. In the programs an entry itself has no texts. */
export function textsOf(entry: ArgumentShape): EntryTexts {
  return entryTexts[entries.indexOf(entry)] ?? NONE;
}
