/** The same said otherwise: a value in another unit, a line as prose. */
import type { Position } from "../../../../grammar/document.ts";
import { placeAt } from "../../../build/source.ts";
import { siteAt } from "../../names/occurrences.ts";
import { statementAt, valueAt } from "../../text/statement-at.ts";
import { editOf } from "../../to-protocol.ts";
import type { FileView } from "../../view.ts";
import { inOtherUnits } from "../../words/other-units.ts";
import { quantityOfNode } from "../hover/of-value.ts";
import type { Action } from "./action.ts";
import { REWRITE } from "./action.ts";

export function rewritings(view: FileView, position: Position): readonly Action[] {
  return [...conversions(view, position), ...asProse(view, position)];
}

function conversions(view: FileView, position: Position): readonly Action[] {
  const at = view.placeAt(position);
  const site = at && siteAt(view, at);
  const statement = at && statementAt(at.block, at.offset);
  const value = statement && valueAt(statement, at.offset);
  const node = value?.nodes.findLast((inner) => "kind" in inner && inner.kind === "quantity");
  if (site === undefined || node === undefined || !("kind" in node) || node.kind !== "quantity") return [];
  const quantity = quantityOfNode(node);
  if (quantity === undefined || node.parts.some(({ unit }) => unit === undefined)) return [];
  return inOtherUnits(quantity).map((text) => ({
    title: `Write ${text}`,
    kind: REWRITE,
    preferred: false,
    edits: new Map([[view.file, [editOf(placeAt(site, node), text)]]]),
  }));
}

/** A record that cannot be read may have been meant as a sentence. */
function asProse(view: FileView, position: Position): readonly Action[] {
  const at = view.placeAt(position);
  const site = at && siteAt(view, at);
  const statement = at && statementAt(at.block, at.offset);
  if (site === undefined || statement?.kind !== "record" || statement.faults.length === 0) return [];
  if (statement.faults.some(({ fixes }) => fixes.some(({ text }) => text === "| "))) return [];
  const { start } = statement.word;
  return [
    {
      title: "Keep the line as prose",
      kind: REWRITE,
      preferred: false,
      edits: new Map([[view.file, [editOf({ site, start, end: start }, "| ")]]]),
    },
  ];
}
