/** A photo in the hover of its line. */
import type { RecordNode } from "../../../../grammar/syntax.ts";
import { escaped, paragraphs } from "../../markdown.ts";
import { uriWithin } from "../../uri.ts";
import type { FileView } from "../../view.ts";

/** The picture of a `photo:` line, or a word that it is missing; undefined of any other line. */
export function describePhoto({ snapshot }: FileView, { word, values }: RecordNode): string | undefined {
  const path = values.get("path");
  if (word.text !== "photo" || path?.kind !== "string") return undefined;
  const caption = values.get("note");
  const words = caption?.kind === "string" ? escaped(caption.text) : undefined;
  if (snapshot.options.photos?.(path.text) === false)
    return `there is no file ${escaped(path.text)} within the build’s folder`;
  const address = uriWithin(snapshot.folder, path.text);
  // A path that could end the address, or leads out of the folder, is shown as text.
  const safe = /^file:\/\/[^()\s<>"]*$/.test(address) && address.startsWith(`${snapshot.folder}/`);
  return paragraphs(safe ? `![${words ?? ""}](${address}|width=400)` : escaped(path.text), words);
}
