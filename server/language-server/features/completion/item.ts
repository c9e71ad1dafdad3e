/** What a completion is made of, before it becomes an item of the protocol. */
import type { CompletionItem, Range } from "vscode-languageserver";
import { CompletionItemKind, InsertTextFormat } from "vscode-languageserver";
import type { NamedKind } from "../../../build/block-definition.ts";
import type { TreeKind } from "../../../build/tree/node.ts";
import type { ValuePlace } from "../../text/due.ts";
import type { FileView } from "../../view.ts";

/** What documentation is made from when an item is looked at. */
export type Documented =
  | { readonly is: "node"; readonly path: string }
  | { readonly is: "named"; readonly kind: NamedKind; readonly name: string }
  | { readonly is: "characteristic"; readonly path: string; readonly name: string }
  | { readonly is: "snag"; readonly name: string }
  | { readonly is: "order"; readonly name: string }
  | { readonly is: "calc"; readonly name: string }
  | { readonly is: "function"; readonly name: string }
  | { readonly is: "block"; readonly word: string }
  | { readonly is: "record"; readonly block: string; readonly word: string }
  | { readonly is: "rule"; readonly code: string };

/** Lower comes first: what fits, what is possible, what is there at all. */
export type Rank = 0 | 1 | 2 | 3;

export interface Proposal {
  readonly label: string;
  readonly kind: CompletionItemKind;
  readonly rank: Rank;
  /** A few words behind the label. */
  readonly detail?: string | undefined;
  /** What is written; the label where it is left out. */
  readonly text?: string;
  /** The same with places to fill in, for clients that know them. */
  readonly snippet?: string;
  readonly documented?: Documented;
}

/** What every group of proposals is made from. */
export interface Asked {
  readonly view: FileView;
  readonly place: ValuePlace;
  /** The word under way. */
  readonly partial: string;
}

export const KIND_OF_NODE: Readonly<Record<TreeKind, CompletionItemKind>> = {
  vehicle: CompletionItemKind.Module,
  assembly: CompletionItemKind.Folder,
  part: CompletionItemKind.Class,
  joint: CompletionItemKind.Struct,
  system: CompletionItemKind.Interface,
  circuit: CompletionItemKind.Enum,
};

export function itemOf(
  { label, kind, rank, detail, text, snippet, documented }: Proposal,
  range: Range,
  uri: string,
  snippets: boolean,
): CompletionItem {
  const isSnippet = snippets && snippet !== undefined;
  // There are up to hundreds of them: what says nothing is left out, such as a text to filter by that is the label.
  const item: CompletionItem = {
    label,
    kind,
    sortText: `${rank}${label}`,
    textEdit: { range, newText: isSnippet ? snippet : (text ?? label) },
  };
  if (detail !== undefined) item.detail = detail;
  if (isSnippet) item.insertTextFormat = InsertTextFormat.Snippet;
  if (documented !== undefined) item.data = { uri, documented };
  return item;
}
