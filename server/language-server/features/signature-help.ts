/** The form of the line under way, or of the function call within it, with the place at the cursor marked. */
import type { SignatureHelp } from "vscode-languageserver";
import { MarkupKind } from "vscode-languageserver";
import type { Position } from "../../../grammar/document.ts";
import { describeClause, describeShape, placeholder } from "../../../grammar/vocabulary/describe.ts";
import type { ArgumentShape, Element } from "../../../grammar/vocabulary/shape.ts";
import { textsOf } from "../../../grammar/vocabulary/texts-of.ts";
import { describeFunction } from "../../expressions/function-description.ts";
import { paragraphs, prose } from "../markdown.ts";
import type { Due, ValuePlace } from "../text/due.ts";
import { cursorPlace } from "../text/due.ts";
import type { BlockPlace, FileView } from "../view.ts";

export function signatureHelp(view: FileView, position: Position): SignatureHelp | undefined {
  const at = view.placeAt(position);
  const place = at && cursorPlace(at.block, at.offset);
  if (at === undefined || place === undefined || (place.is !== "value" && place.is !== "text"))
    return undefined;
  return ofCall(at, place) ?? ofStatement(place);
}

interface Piece {
  readonly label: string;
  readonly role: string;
  readonly doc: string;
}

function ofStatement({ entry, due, values }: ValuePlace): SignatureHelp {
  const pieces = piecesOf(entry);
  const [first] = due;
  const underWay =
    first === undefined ? lastRead(pieces, values) : pieces.findIndex(({ role }) => role === roleOf(first));
  const colon = "blocks" in entry ? ":" : "";
  let label = `${entry.word}${colon}`;
  const parameters = pieces.map((piece) => {
    const start = label.length + 1;
    label += ` ${piece.label}`;
    const documentation = { kind: MarkupKind.Markdown, value: prose(piece.doc) };
    return { label: [start, label.length] as [number, number], documentation };
  });
  const { help } = textsOf(entry);
  return {
    signatures: [{ label, documentation: { kind: MarkupKind.Markdown, value: prose(help) }, parameters }],
    activeSignature: 0,
    ...(underWay < 0 ? {} : { activeParameter: underWay }),
  };
}

function piecesOf({ elements, clauses, note }: ArgumentShape): readonly Piece[] {
  return [
    ...elements.map((element) => ({
      label: labelOf(element),
      role: element.role,
      doc: describeShape(element.shape),
    })),
    ...clauses.map((clause) => ({
      label: describeClause(clause),
      role: clause.role,
      doc: clause.shape === undefined ? clause.words.join(" ") : describeShape(clause.shape),
    })),
    ...(note === false
      ? []
      : [{ label: note === "required" ? '"note"' : '["note"]', role: "note", doc: "its note" }]),
  ];
}

function labelOf({ shape, role, optional }: Element): string {
  const label = placeholder(shape, role);
  return optional === true ? `[${label}]` : label;
}

function roleOf(due: Due): string {
  return due.is === "value" ? due.role : due.clause.role;
}

/** Where nothing more is due, the value that was read last. */
function lastRead(pieces: readonly Piece[], values: ValuePlace["values"]): number {
  const [last] = [...values].sort(([, a], [, b]) => b.end - a.end);
  return last === undefined ? -1 : pieces.findIndex(({ role }) => role === last[0]);
}

/** The innermost call that the cursor is in, and which of its arguments. */
function ofCall({ block, offset }: BlockPlace, { statement }: ValuePlace): SignatureHelp | undefined {
  if (statement.word.text !== "calc") return undefined;
  const call = callUnderWay(block.text.slice(statement.word.end, offset));
  const description = call && describeFunction(call.name);
  if (call === undefined || description === undefined) return undefined;
  const last = description.parameters.length - 1;
  return {
    signatures: [
      {
        label: description.signature,
        documentation: {
          kind: MarkupKind.Markdown,
          value: paragraphs(prose(description.summary), `Formula: ${prose(description.formula)}`),
        },
        parameters: description.parameters.map(({ label, doc, takes }) => ({
          label,
          documentation: {
            kind: MarkupKind.Markdown,
            value: paragraphs(prose(doc), takes === undefined ? undefined : prose(takes)),
          },
        })),
      },
    ],
    activeSignature: 0,
    activeParameter: Math.min(call.argument, last),
  };
}

function callUnderWay(text: string): { readonly name: string; readonly argument: number } | undefined {
  const open: { name: string; argument: number }[] = [];
  let word = "";
  let inString = false;
  for (const character of text) {
    if (character === '"') inString = !inString;
    if (inString) continue;
    if (/[A-Za-z0-9_]/.test(character)) {
      word += character;
      continue;
    }
    const innermost = open.at(-1);
    if (character === "(") open.push({ name: word, argument: 0 });
    else if (character === ")") open.pop();
    else if (character === "," && innermost !== undefined) innermost.argument++;
    word = "";
  }
  return open.findLast(({ name }) => name !== "");
}
