/** What is told of the word at the cursor. */
import type { Hover } from "vscode-languageserver";
import { MarkupKind } from "vscode-languageserver";
import type { Position } from "../../../../grammar/document.ts";
import { isNameCharacter } from "../../../../grammar/lines.ts";
import type { RecordNode, Span } from "../../../../grammar/syntax.ts";
import type { Build } from "../../../build/build.ts";
import { describeFunction, functionMarkdown } from "../../../expressions/function-description.ts";
import { paragraphs } from "../../markdown.ts";
import { occurrenceAt } from "../../names/occurrences.ts";
import type { Thing } from "../../names/thing.ts";
import { touches } from "../../text/inner-nodes.ts";
import { entryOf, statementAt, valueAt } from "../../text/statement-at.ts";
import { rangeIn } from "../../to-protocol.ts";
import type { BlockPlace, FileView } from "../../view.ts";
import type { WrittenLaterOf } from "./lateness.ts";
import { lateness } from "./lateness.ts";
import { describeDefinition } from "./of-definition.ts";
import { describeCalculated, describeCharacteristic, describeOrder, describeSnag } from "./of-diary-name.ts";
import { describeNode } from "./of-node.ts";
import { describePhoto } from "./of-photo.ts";
import { describeValue } from "./of-value.ts";
import { clauseWith, describeClauseOf, describeEntry } from "./of-word.ts";

/** A set can mean many things: the first few are told. */
const MOST_THINGS = 3;

/** @param writtenLater says of a fact whether it was written later than its day */
export function hover(
  view: FileView,
  position: Position,
  writtenLater: WrittenLaterOf = () => undefined,
): Hover | undefined {
  const at = view.placeAt(position);
  if (at === undefined) return undefined;
  const found = toldAt(view, at);
  const late = lateness(view.file, at, writtenLater);
  // First, since it bears on all that follows, and a long text is cut.
  const value = paragraphs(late?.markdown, found?.markdown);
  const span = found?.span ?? late?.span;
  if (span === undefined || value === "") return undefined;
  return { contents: { kind: MarkupKind.Markdown, value }, range: rangeIn(view.document, at.index, span) };
}

interface Told {
  readonly span: Span;
  readonly markdown: string;
}

function toldAt(view: FileView, at: BlockPlace): Told | undefined {
  const statement = statementAt(at.block, at.offset);
  if (statement === undefined) return undefined;
  const entry = entryOf(at.block, statement);
  if (touches(statement.word, at.offset))
    return entry && { span: statement.word, markdown: describeEntry(entry) };
  return (
    photoAt(view, at) ??
    thingAt(view, at) ??
    valueTold(view, at) ??
    (entry &&
      clauseAt(at, (word) => {
        const clause = clauseWith(entry, word);
        return clause && describeClauseOf(entry, clause);
      }))
  );
}

function photoAt(view: FileView, at: BlockPlace): Told | undefined {
  const statement = statementAt(at.block, at.offset) as RecordNode;
  const path = statement.values.get("path");
  if (path === undefined || !touches(path, at.offset)) return undefined;
  const markdown = describePhoto(view, statement);
  return markdown === undefined ? undefined : { span: path, markdown };
}

function thingAt(view: FileView, at: BlockPlace): Told | undefined {
  const occurrence = occurrenceAt(view, at);
  if (occurrence === undefined) return undefined;
  const told = occurrence.things.slice(0, MOST_THINGS).map((thing) => describeThing(view.build, thing));
  const more = occurrence.things.length - told.length;
  const markdown = [...told, ...(more > 0 ? [`and ${more} more`] : [])].join("\n\n---\n\n");
  return { span: occurrence.name, markdown };
}

export function describeThing(build: Build, thing: Thing): string {
  switch (thing.is) {
    case "node":
      return describeNode(build, thing.node);
    case "named":
      return describeDefinition(build, thing.definition);
    case "characteristic":
      return describeCharacteristic(build, thing.node, thing.name);
    case "calc":
      return describeCalculated(build, thing.name);
    case "snag":
      return describeSnag(build, thing.name);
    case "order":
      return describeOrder(build, thing.name);
    case "function": {
      const description = describeFunction(thing.name);
      return description === undefined ? "" : functionMarkdown(description);
    }
  }
}

function valueTold({ build }: FileView, at: BlockPlace): Told | undefined {
  const statement = statementAt(at.block, at.offset);
  const value = statement && valueAt(statement, at.offset);
  const told = value && describeValue(build.today, value.nodes);
  return told && { span: told.node, markdown: paragraphs(told.markdown) };
}

/** The word at the cursor, if it stands between the values. */
function clauseAt(
  { block, offset }: BlockPlace,
  describe: (word: string) => string | undefined,
): Told | undefined {
  let [start, end] = [offset, offset];
  while (start > 0 && isNameCharacter(block.text.charCodeAt(start - 1))) start--;
  while (isNameCharacter(block.text.charCodeAt(end))) end++;
  const markdown = end > start ? describe(block.text.slice(start, end)) : undefined;
  return markdown === undefined ? undefined : { span: { start, end }, markdown };
}
