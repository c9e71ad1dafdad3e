/** Every line that names the thing at the cursor. */
import type { DocumentHighlight, Location } from "vscode-languageserver";
import { DocumentHighlightKind } from "vscode-languageserver";
import type { Position } from "../../../grammar/document.ts";
import { occurrenceAt, occurrencesOf } from "../names/occurrences.ts";
import { locationOf, rangeOf } from "../to-protocol.ts";
import type { FileView } from "../view.ts";

export function references(view: FileView, position: Position, withDefinition: boolean): Location[] {
  const at = view.placeAt(position);
  const here = at && occurrenceAt(view, at);
  if (here === undefined) return [];
  return [...occurrencesOf(view.build, here.things)]
    .filter(({ name }) => withDefinition || !name.defines)
    .map(({ place }) => locationOf(place, (file) => view.uriOf(file)));
}

/** The same within one file, told apart by whether the name is given or used. */
export function highlights(view: FileView, position: Position): DocumentHighlight[] {
  const at = view.placeAt(position);
  const here = at && occurrenceAt(view, at);
  if (here === undefined) return [];
  return [...occurrencesOf(view.build, here.things, view.sites)].map(({ name, place }) => ({
    range: rangeOf(place),
    kind: name.defines ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
  }));
}
