/** *Open the example*: a small build to look at and to change, in a text that is not saved anywhere. */
import type { Uri as UriType } from "vscode";
import { Uri, window, workspace } from "vscode";

/** @param extension the folder of the extension */
export async function openExample(extension: UriType): Promise<void> {
  const file = Uri.joinPath(extension, "media/walkthrough/example.cotter");
  const content = new TextDecoder().decode(await workspace.fs.readFile(file));
  await window.showTextDocument(await workspace.openTextDocument({ language: "cotter", content }));
}
