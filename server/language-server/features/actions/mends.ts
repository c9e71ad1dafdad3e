/** Mends of complaints, and setting one aside with a reason. */
import type { Range } from "vscode-languageserver";
import { contentEndOf } from "../../../../grammar/lines.ts";
import type { ItemNode } from "../../../../grammar/syntax.ts";
import type { Complaint } from "../../../rules/complaint.ts";
import type { Fix } from "../../../rules/rule.ts";
import { itemAt } from "../../text/statement-at.ts";
import { editOf, rangeOf } from "../../to-protocol.ts";
import type { FileView } from "../../view.ts";
import type { Action, FileEdits } from "./action.ts";
import { editsOf, FIX_ALL, QUICK_FIX } from "./action.ts";

/** The complaints that a stretch of the file touches. */
export function complaintsAt({ complaints }: FileView, { start, end }: Range): readonly Complaint[] {
  const before = (a: Range["start"], b: Range["start"]) => a.line - b.line || a.character - b.character;
  return complaints.filter(({ place }) => {
    const range = rangeOf(place);
    return before(range.start, end) <= 0 && before(start, range.end) <= 0;
  });
}

export function mendsOf(complaint: Complaint, { build }: FileView): readonly Action[] {
  return complaint.fixes(build).map((fix) => ({
    title: fix.title,
    kind: QUICK_FIX,
    preferred: fix.sure,
    complaint,
    edits: editsOfFix(fix),
  }));
}

/** The sure mends of a file, each stretch once: what a save may carry out unasked. */
export function fixAll({ build, complaints, file }: FileView): Action | undefined {
  const fixes = complaints.flatMap((complaint) =>
    complaint
      .fixes(build)
      .slice(0, 1)
      .filter(({ sure }) => sure),
  );
  let end = -1;
  const chosen = fixes
    .flatMap((fix) => fix.edits)
    .filter(({ place }) => place.site.file === file)
    .sort((a, b) => a.place.site.index - b.place.site.index || a.place.start - b.place.start)
    .filter(({ place }) => {
      const offset = file.document.offsets[place.site.index] ?? 0;
      if (offset + place.start < end) return false;
      end = offset + place.end;
      return true;
    });
  if (chosen.length === 0) return undefined;
  const edits = new Map([[file, chosen.map(({ place, text }) => editOf(place, text))]]);
  return { title: "Carry out every sure mend in this file", kind: FIX_ALL, preferred: false, edits };
}

/** Codes of the text itself: a line that cannot be read is mended, not waived. */
const UNWAIVABLE =
  /^(?:unreadable|unknown|unclosed|missing-value|bad-date|decimal-comma|record-not-here|waiver|unused-waiver)/;

/** A comment at the end of the line that asks for the reason. */
export function waive(complaint: Complaint): Action | undefined {
  const { code, place, waivable } = complaint;
  const item = itemAt(place.site.block, place.start);
  if (!waivable || item === undefined || UNWAIVABLE.test(code) || hasComment(item)) return undefined;
  const { text, lineStarts } = place.site.block;
  const next = lineStarts.find((start) => start > place.start) ?? text.length;
  const end = contentEndOf(text, place.start, next);
  const edit = editOf({ site: place.site, start: end, end }, `  # waived ${code}: `);
  return {
    title: `Waive ${code}, with a reason`,
    kind: QUICK_FIX,
    preferred: false,
    complaint,
    edits: new Map([[place.site.file, [edit]]]),
  };
}

/** A joint that nothing can be held against gets the line for its torque; the figure is the author's. */
export function stateTorque(complaint: Complaint): Action | undefined {
  const { code, place } = complaint;
  const { block, file } = place.site;
  const isThere = block.items.some((item) => item.kind === "record" && item.word.text === "torque");
  if (code !== "torque-not-stated" || block.header?.block !== "joint" || isThere) return undefined;
  const end = block.text.trimEnd().length;
  const edit = editOf({ site: place.site, start: end, end }, "\n  torque: ");
  return {
    title: "State its torque",
    kind: QUICK_FIX,
    preferred: false,
    complaint,
    edits: new Map([[file, [edit]]]),
  };
}

function hasComment(item: ItemNode): boolean {
  return (item.kind !== "header" && item.kind !== "record") || item.comments.length > 0;
}

function editsOfFix({ edits }: Fix): FileEdits {
  return editsOf(edits.map(({ place, text }) => [place.site.file, editOf(place, text)] as const));
}
