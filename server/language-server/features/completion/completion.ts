/** What may be written at the cursor: worked out from the vocabulary's shapes, filled from the build. */
import type { CompletionItem } from "vscode-languageserver";
import { CompletionItemKind } from "vscode-languageserver";
import type { Position } from "../../../../grammar/document.ts";
import type { BlockNode } from "../../../../grammar/syntax.ts";
import type { CursorPlace, Due } from "../../text/due.ts";
import { cursorPlace } from "../../text/due.ts";
import { rangeIn } from "../../to-protocol.ts";
import type { BlockPlace, FileView } from "../../view.ts";
import type { Asked, Proposal } from "./item.ts";
import { itemOf } from "./item.ts";
import { expressionProposals } from "./of-expressions.ts";
import { referenceProposals } from "./of-references.ts";
import {
  characteristicProposals,
  currencies,
  dateProposals,
  subjectsOf,
  textProposals,
  unitProposals,
} from "./of-values.ts";
import {
  blockProposals,
  followers,
  recordProposals,
  waiverProposals,
  wordProposals,
  wordsOfShape,
} from "./of-words.ts";

/** @param snippets whether the client can take forms to fill in */
export function completion(view: FileView, position: Position, snippets: boolean): CompletionItem[] {
  const at = view.placeAt(position);
  if (at === undefined) return emptyFile(view, position, snippets);
  const place = cursorPlace(at.block, at.offset);
  if (place === undefined) return [];
  const range = rangeIn(view.document, at.index, place.partial);
  const unique = new Map(proposals(view, at, place).map((proposal) => [proposal.label, proposal]));
  return [...unique.values()].map((proposal) => itemOf(proposal, range, view.log.path, snippets));
}

function emptyFile(view: FileView, position: Position, snippets: boolean): CompletionItem[] {
  const range = { start: position, end: position };
  return blockProposals(view).map((proposal) => itemOf(proposal, range, view.log.path, snippets));
}

function proposals(view: FileView, at: BlockPlace, place: CursorPlace): readonly Proposal[] {
  switch (place.is) {
    case "block word":
      return blockProposals(view);
    case "record word":
      return recordProposals(place.block, wordsIn(at.block));
    case "waiver": {
      const { start, end } = place.statement;
      const here = view.complaints.filter(
        (each) => each.place.site.index === at.index && start <= each.place.start && each.place.start < end,
      );
      return waiverProposals(new Set(here.map(({ code }) => code)));
    }
    case "text":
      return textProposals(askedAt(view, at, place));
    case "value":
      return valueProposals(askedAt(view, at, place), at);
  }
}

function askedAt(view: FileView, at: BlockPlace, place: CursorPlace & { is: "value" | "text" }): Asked {
  return { view, place, partial: at.block.text.slice(place.partial.start, place.partial.end) };
}

function wordsIn({ items }: BlockNode): ReadonlySet<string> {
  return new Set(items.flatMap((item) => (item.kind === "record" && item.known ? [item.word.text] : [])));
}

function valueProposals(asked: Asked, at: BlockPlace): readonly Proposal[] {
  const { place } = asked;
  const subjects = subjectsOf(asked, at);
  if (place.behindNumber) {
    const [first] = place.due;
    const counted = place.due.some((due) => due.is === "value" && COUNTED.has(due.shape.value));
    return counted
      ? wordProposals(["x"], 0)
      : [...unitProposals(asked, first, subjects), ...wordProposals(followers(asked), 2)];
  }
  return [...place.due.flatMap((due) => ofDue(asked, due, subjects)), ...wordProposals(followers(asked), 2)];
}

const COUNTED: ReadonlySet<string> = new Set(["countedReferences", "bolt", "countedQuantity"]);

function ofDue(
  asked: Asked,
  due: Due,
  subjects: Parameters<typeof characteristicProposals>[1],
): readonly Proposal[] {
  if (due.is === "words")
    return [{ label: due.text, kind: CompletionItemKind.Keyword, rank: 1, text: due.text }];
  const { shape } = due;
  switch (shape.value) {
    case "reference":
      return referenceProposals(asked, shape.to, shape.member === true);
    case "references":
    case "countedReferences":
      return referenceProposals(asked, shape.to, false);
    case "stops":
      return [...referenceProposals(asked, ["job"], false), ...wordProposals(wordsOfShape(shape), 1)];
    case "date":
    case "dateRange":
      return dateProposals(asked.view.recentBuild);
    case "expression":
      return expressionProposals(asked, subjects);
    case "word":
    case "words":
      if ("choices" in shape.of) return wordProposals(wordsOfShape(shape), 0);
      if (shape.of.names === "currency") return currencies(asked.view.recentBuild);
      if (shape.of.names === "path") return referenceProposals(asked, ["assembly"], false);
      return characteristicProposals(asked, subjects);
    default:
      return wordProposals(wordsOfShape(shape), 0);
  }
}
