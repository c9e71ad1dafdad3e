/** Everything that can be done at a place: mends first, then what can be rewritten and written down. */
import type { Range } from "vscode-languageserver";
import type { Complaint } from "../../../rules/complaint.ts";
import type { FileView } from "../../view.ts";
import type { Action } from "./action.ts";
import { complaintsAt, fixAll, mendsOf, stateTorque, waive } from "./mends.ts";
import { rewritings } from "./rewriting.ts";
import { factsToWriteDown } from "./writing-down.ts";

/** @param only kinds that are asked for; none for all but those of the whole file */
export function actions(view: FileView, range: Range, only: readonly string[]): readonly Action[] {
  const complaints = complaintsAt(view, range);
  const all = [
    ...complaints.flatMap((complaint) => mendsOf(complaint, view)),
    ...complaints.flatMap((complaint) => stateTorque(complaint) ?? []),
    ...waivers(complaints),
    ...rewritings(view, range.start),
    ...factsToWriteDown(view, range.start),
    ...(asks(only, "source") ? [fixAll(view)].filter((action) => action !== undefined) : []),
  ];
  return only.length === 0 ? all : all.filter(({ kind }) => only.some((asked) => isOfKind(kind, asked)));
}

/** One for each code, however often a line brings it. */
function waivers(complaints: readonly Complaint[]): readonly Action[] {
  const all = complaints.flatMap((complaint) => waive(complaint) ?? []);
  return [...new Map(all.map((action) => [action.title, action])).values()];
}

function asks(only: readonly string[], family: string): boolean {
  return only.some((asked) => asked === "" || isOfKind(asked, family));
}

/** `source.fixAll.cotter` is of the kind `source.fixAll`, and of `source`. */
function isOfKind(kind: string, asked: string): boolean {
  return asked === "" || kind === asked || kind.startsWith(`${asked}.`);
}
