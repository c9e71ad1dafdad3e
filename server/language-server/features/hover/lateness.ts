/** What is told of a fact that was written later than the day it tells of. */
import type { Span } from "../../../../grammar/syntax.ts";
import type { SourceFile } from "../../../build/source.ts";
import { sayDaysLater } from "../../../history/days-later.ts";
import type { WrittenFact, WrittenLater } from "../../../history/written-later.ts";
import { isDateFault, readDate } from "../../../quantities/dates.ts";
import { escaped } from "../../markdown.ts";
import { statementAt } from "../../text/statement-at.ts";
import type { BlockPlace } from "../../view.ts";

export type WrittenLaterOf = (fact: WrittenFact) => WrittenLater | undefined;

const SHORT = 9;

export function lateness(
  { path }: SourceFile,
  { block, offset }: BlockPlace,
  writtenLater: WrittenLaterOf,
): { readonly span: Span; readonly markdown: string } | undefined {
  const statement = statementAt(block, offset);
  const date = block.header?.block === "day" ? block.header.values.get("date") : undefined;
  if (statement?.kind !== "record" || date?.kind !== "date") return undefined;
  const day = readDate(date.text);
  if (isDateFault(day)) return undefined;
  const { start } = statement.word;
  const [line = ""] = block.text.slice(start).split("\n", 1);
  const late = writtenLater({ file: path, day, line });
  if (late === undefined) return undefined;
  const words = `Written ${sayDaysLater(late.daysLater)}, on ${late.written}, by ${late.author} (commit ${late.commit.slice(0, SHORT)})`;
  return { span: { start, end: start + line.trimEnd().length }, markdown: `*${escaped(words)}*` };
}
