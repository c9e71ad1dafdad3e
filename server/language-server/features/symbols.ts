/** The outline of a file, and every named thing of the workspace. */
import type { DocumentSymbol, WorkspaceSymbol } from "vscode-languageserver";
import { SymbolKind } from "vscode-languageserver";
import type { Document } from "../../../grammar/document.ts";
import type { BlockNode, BlockWord, HeaderNode, RecordNode } from "../../../grammar/syntax.ts";
import type { BuildSnapshot } from "../../workspace/build-snapshot.ts";
import { locationOf, rangeIn } from "../to-protocol.ts";

const KINDS: Readonly<Record<BlockWord, SymbolKind>> = {
  vehicle: SymbolKind.Package,
  supplier: SymbolKind.Interface,
  gauge: SymbolKind.Operator,
  assembly: SymbolKind.Namespace,
  part: SymbolKind.Class,
  joint: SymbolKind.Field,
  system: SymbolKind.Object,
  circuit: SymbolKind.Struct,
  job: SymbolKind.Function,
  hold: SymbolKind.Enum,
  setup: SymbolKind.Constant,
  donor: SymbolKind.TypeParameter,
  day: SymbolKind.Event,
};

/** Blocks, and below each the records that carry a name of their own. */
export function documentSymbols(document: Document): DocumentSymbol[] {
  return document.blocks.flatMap((block, index) => {
    const { header } = block;
    if (header?.block === undefined) return [];
    const { name, detail } = said(header);
    return [
      {
        name,
        detail,
        kind: KINDS[header.block],
        range: rangeIn(document, index, { start: 0, end: block.text.trimEnd().length }),
        selectionRange: rangeIn(document, index, header.values.get("name") ?? header.word),
        children: block.items.flatMap((item) => (item.kind === "record" ? named(document, index, item) : [])),
      },
    ];
  });
}

function named(document: Document, block: number, record: RecordNode): DocumentSymbol[] {
  const name = record.values.get("name");
  if (name?.kind !== "word") return [];
  return [
    {
      name: name.text,
      detail: record.word.text,
      kind: record.word.text === "calc" ? SymbolKind.Variable : SymbolKind.Property,
      range: rangeIn(document, block, { start: record.word.start, end: record.contentEnd }),
      selectionRange: rangeIn(document, block, name),
    },
  ];
}

/** What a header is called in the outline. */
function said({ word, values, block }: HeaderNode): { name: string; detail: string } {
  const title = values.get("title");
  const name = values.get("name") ?? values.get("date");
  const words = title?.kind === "string" ? title.text : "";
  const own = name?.kind === "word" || name?.kind === "date" ? name.text : "";
  if (own === "") return { name: words === "" ? word.text : words, detail: word.text };
  return { name: own, detail: words === "" ? (block ?? "") : words };
}

/** Every thing with a name whose name or title holds the letters of the query in their order. */
export function workspaceSymbols(
  snapshots: readonly BuildSnapshot[],
  query: string,
  uriOf: (snapshot: BuildSnapshot) => (file: BuildSnapshot["logs"][number]["file"]) => string,
): WorkspaceSymbol[] {
  return snapshots.flatMap((snapshot) =>
    snapshot.build.sites.flatMap((site) => {
      const symbol = symbolOf(site.block, query);
      if (symbol === undefined) return [];
      const place = { site, ...symbol.at };
      return [{ ...symbol.shown, location: locationOf(place, uriOf(snapshot)) }];
    }),
  );
}

function symbolOf({ header }: BlockNode, query: string) {
  if (header?.block === undefined) return undefined;
  const { name, detail } = said(header);
  if (!holdsInOrder(`${name} ${detail}`, query)) return undefined;
  const { start, end } = header.values.get("name") ?? header.values.get("date") ?? header.word;
  return { shown: { name, kind: KINDS[header.block], containerName: detail }, at: { start, end } };
}

function holdsInOrder(text: string, query: string): boolean {
  const letters = text.toLowerCase();
  let at = -1;
  for (const letter of query.toLowerCase()) {
    at = letters.indexOf(letter, at + 1);
    if (at < 0) return false;
  }
  return true;
}
