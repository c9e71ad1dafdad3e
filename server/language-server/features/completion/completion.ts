/** What may be written at the cursor: worked out from the vocabulary's shapes, filled from the build. */
import type { CompletionList } from "vscode-languageserver";
import { CompletionItemKind } from "vscode-languageserver";
import type { Position } from "../../../../grammar/document.ts";
import type { BlockNode } from "../../../../grammar/syntax.ts";
import { inOneList } from "../../../build/list-under.ts";
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

/**
 * So many are offered at once. Of a vehicle of thousands of parts nobody reads them all: those are chosen that can still
 * become what is being written, and the client is told to ask again as it is.
 */
const MOST_OFFERED = 200;

/** @param snippets whether the client can take forms to fill in */
export function completion(view: FileView, position: Position, snippets: boolean): CompletionList {
  const at = view.placeAt(position);
  const place = at && cursorPlace(at.block, at.offset);
  if (at !== undefined && place === undefined) return { isIncomplete: false, items: [] };
  const inFile = at !== undefined && place !== undefined;
  const range = inFile ? rangeIn(view.document, at.index, place.partial) : { start: position, end: position };
  const all = inFile ? proposals(view, at, place) : blockProposals(view);
  const isIncomplete = all.length > MOST_OFFERED;
  const written = inFile ? at.block.text.slice(place.partial.start, at.offset) : "";
  const offered = isIncomplete ? likeliest(all, written) : withoutRepeats(all);
  return {
    isIncomplete,
    items: offered.map((proposal) => itemOf(proposal, range, view.log.path, snippets)),
  };
}

/** Of those with one label the last, in the place of the first. */
function withoutRepeats(all: readonly Proposal[]): readonly Proposal[] {
  const byLabel = new Map<string, Proposal>();
  for (const proposal of all) byLabel.set(proposal.label, proposal);
  return byLabel.size === all.length ? all : [...byLabel.values()];
}

/** The first of those that have all that is written, in its order. */
function likeliest(all: readonly Proposal[], written: string): readonly Proposal[] {
  const lower = written.toLowerCase();
  const able = all.filter(({ label }) => hasInOrder(label, lower) || hasInOrder(label.toLowerCase(), lower));
  return [...withoutRepeats(able)]
    .sort((a, b) => a.rank - b.rank || (a.label < b.label ? -1 : 1))
    .slice(0, MOST_OFFERED);
}

function hasInOrder(label: string, written: string): boolean {
  let from = 0;
  for (let index = 0; index < written.length; index++) {
    const found = label.indexOf(written.charAt(index), from);
    if (found < 0) return false;
    from = found + 1;
  }
  return true;
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
  return inOneList([
    ...place.due.map((due) => ofDue(asked, due, subjects)),
    wordProposals(followers(asked), 2),
  ]);
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
