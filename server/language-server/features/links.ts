/** What can be opened from the text: photos within the build's folder, web and mail addresses of suppliers. */
import type { DocumentLink } from "vscode-languageserver";
import type { RecordNode, StringNode } from "../../../grammar/syntax.ts";
import { rangeIn } from "../to-protocol.ts";
import { uriWithin } from "../uri.ts";
import type { FileView } from "../view.ts";

export function documentLinks(view: FileView): DocumentLink[] {
  const { document } = view;
  return document.blocks.flatMap((block, index) =>
    block.items.flatMap((item) => {
      const found = item.kind === "record" ? linkIn(view, item) : undefined;
      if (found === undefined) return [];
      const { node, target, tooltip } = found;
      // The link is the text within the quotation marks.
      const span = { start: node.start + 1, end: node.closed ? node.end - 1 : node.end };
      return [{ range: rangeIn(document, index, span), target, tooltip }];
    }),
  );
}

interface Link {
  readonly node: StringNode;
  readonly target: string;
  readonly tooltip: string;
}

function linkIn({ snapshot }: FileView, { word, values }: RecordNode): Link | undefined {
  for (const node of values.values()) {
    if (node.kind !== "string") continue;
    const { text } = node;
    switch (word.text) {
      case "photo": {
        const target = uriWithin(snapshot.folder, text);
        const isWithin = target.startsWith(`${snapshot.folder}/`) && !/^[a-z]+:/i.test(text);
        if (!isWithin || snapshot.options.photos?.(text) === false) return undefined;
        return { node, target, tooltip: "Open the photo" };
      }
      case "web":
        return /^https?:\/\/\S+$/i.test(text) ? { node, target: text, tooltip: "Open the page" } : undefined;
      case "email":
        return /^[^\s@?&]+@[^\s@?&]+$/.test(text)
          ? { node, target: `mailto:${text}`, tooltip: "Write a mail" }
          : undefined;
      default:
    }
  }
  return undefined;
}
