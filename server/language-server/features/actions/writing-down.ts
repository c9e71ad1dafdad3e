/** Facts that could be written down today: a part ordered, a snag cleared, the joints of an assembly marked, what a part is. */
import type { TextEdit } from "vscode-languageserver";
import type { Position } from "../../../../grammar/document.ts";
import type { Build } from "../../../build/build.ts";
import { identifiedFact } from "../../../build/identification.ts";
import { securing } from "../../../build/securing.ts";
import type { SourceFile } from "../../../build/source.ts";
import type { TreeNode } from "../../../build/tree/node.ts";
import { below } from "../../../build/tree/node.ts";
import { needsOf } from "../../../plan/needs.ts";
import { formatMoney } from "../../../quantities/money.ts";
import { kindOf } from "../../../reports/identify-words.ts";
import { occurrenceAt } from "../../names/occurrences.ts";
import type { Thing } from "../../names/thing.ts";
import type { FileView } from "../../view.ts";
import { possibleIdentity } from "../../words/possible-identity.ts";
import type { Action } from "./action.ts";
import { WRITE_DOWN } from "./action.ts";

/** What could be written down of the things that the cursor is at. */
export function factsToWriteDown(view: FileView, position: Position): readonly Action[] {
  const at = view.placeAt(position);
  const here = at && occurrenceAt(view, at);
  if (here === undefined) return [];
  return here.things.slice(0, 1).flatMap((thing) => factsOf(view, thing));
}

function factsOf(view: FileView, thing: Thing): readonly Action[] {
  const { build } = view;
  if (thing.is === "snag") {
    const snag = build.standing.snags.get(thing.name);
    return snag === undefined || snag.cleared !== undefined
      ? []
      : [written(view, `Clear the snag ${thing.name}`, `cleared: ${thing.name}`)];
  }
  if (thing.is !== "node") return [];
  return [...ordering(view, thing.node), ...marking(view, thing.node), ...identifying(view, thing.node)];
}

function ordering(view: FileView, node: TreeNode): readonly Action[] {
  const { standing } = view.build;
  const need = node.kind === "part" ? needsOf(view.build).find((each) => each.node === node) : undefined;
  if (need === undefined || need.toOrder === 0) return [];
  const supplier = standing.definitions.one(node, "supplier")?.record.reference.text;
  const price = standing.definitions.one(node, "price")?.record.money;
  const at = price === undefined ? "" : ` at ${formatMoney(price)}`;
  const from = supplier === undefined ? "" : ` from ${supplier}`;
  const fact = `ordered: ${need.toOrder} x ${node.path}${at}${from}`;
  return [written(view, `Order ${need.toOrder} x ${node.path}`, fact)];
}

/** Joints below that are tightened and only want their mark. */
function marking(view: FileView, node: TreeNode): readonly Action[] {
  const { standing } = view.build;
  const joints = [node, ...below(node)].filter(
    (each) =>
      standing.joints.has(each) &&
      securing(standing, each).wanting.some(({ code }) => code === "mark-missing") &&
      standing.joints.get(each)?.tightened !== undefined,
  );
  if (joints.length === 0) return [];
  const paths = joints.map(({ path }) => path).join(", ");
  const title = joints.length === 1 ? `Mark ${paths}` : `Mark ${joints.length} joints of ${node.path}`;
  return [written(view, title, `marked: ${paths}`)];
}

/** What an unknown part fits, the best few; what is only near is no proposal. */
function identifying(view: FileView, node: TreeNode): readonly Action[] {
  const fitting = possibleIdentity(view.build, node)?.shown.filter(({ fits }) => fits) ?? [];
  const all = fitting.map(({ candidate }) => {
    const title = `Write down that it is ${candidate.name} (${kindOf(candidate)})`;
    return written(view, title, identifiedFact(node.path, candidate));
  });
  return [...new Map(all.map((action) => [action.title, action])).values()];
}

function written(view: FileView, title: string, fact: string): Action {
  const [file, edit] = factToday(view.build, view.file, fact);
  return { title, kind: WRITE_DOWN, preferred: false, edits: new Map([[file, [edit]]]) };
}

/** A fact at the end of today's block; where there is none yet, in a new one behind the last day. */
function factToday(build: Build, here: SourceFile, fact: string): readonly [SourceFile, TextEdit] {
  const { days } = build.standing.gathered;
  const dated = days.filter(({ date }) => date !== undefined);
  const today = dated.findLast(({ date }) => date === build.today);
  const last = today ?? [...dated].sort((a, b) => ((a.date ?? "") < (b.date ?? "") ? -1 : 1)).at(-1);
  if (last === undefined) {
    const { document } = here;
    const gap = document.text === "" ? "" : document.text.endsWith("\n") ? "\n" : "\n\n";
    const at = document.positionAt(document.length);
    return [here, { range: { start: at, end: at }, newText: `${gap}day ${build.today}\n  ${fact}\n` }];
  }
  const { file, index, block } = last.site;
  const at = file.document.positionIn(index, block.text.trimEnd().length);
  const newText = today === undefined ? `\n\nday ${build.today}\n  ${fact}` : `\n  ${fact}`;
  return [file, { range: { start: at, end: at }, newText }];
}
