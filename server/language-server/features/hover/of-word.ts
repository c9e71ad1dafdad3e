/** What is told of the words of the notation: blocks, records, facts and the clauses behind them. */
import { describeArguments, describeClause } from "../../../../grammar/vocabulary/describe.ts";
import type { BlockEntry, Clause, RecordEntry } from "../../../../grammar/vocabulary/shape.ts";
import { textsOf } from "../../../../grammar/vocabulary/texts-of.ts";
import { block, paragraphs, prose } from "../../markdown.ts";

export function describeEntry(entry: BlockEntry | RecordEntry): string {
  const colon = "blocks" in entry ? ":" : "";
  const { help, example, choice } = textsOf(entry);
  return paragraphs(
    block(`${entry.word}${colon} ${describeArguments(entry)}`, "cotter"),
    prose(help),
    block(example, "cotter"),
    choice === undefined ? undefined : `*${prose(choice)}*`,
  );
}

/** The clause that some word of a statement belongs to. */
export function clauseWith({ clauses }: BlockEntry | RecordEntry, word: string): Clause | undefined {
  return clauses.find(({ words }) => words.includes(word));
}

export function describeClauseOf(entry: BlockEntry | RecordEntry, clause: Clause): string {
  return paragraphs(
    block(`… ${describeClause(clause)}`, "cotter"),
    `a clause of ${entry.word}: ${prose(textsOf(entry).help)}`,
  );
}
