/** *Insert photo*: picks pictures, keeps them with the build, and writes a `photo:` of each into the day. */
import type { TextEditor, Uri as UriType } from "vscode";
import { l10n, Position, window } from "vscode";
import type { ShownBuild } from "../shown-build.ts";
import type { Lines } from "./day-lines.ts";
import { indentAt, isInDay, lastLineOfRecord } from "./day-lines.ts";
import { keepPhoto, photoHome } from "./keep-photo.ts";
import { PHOTO_ENDINGS, photoFact } from "./photo-names.ts";

export async function insertPhoto(shown: ShownBuild): Promise<void> {
  const editor = window.activeTextEditor;
  if (editor === undefined) return;
  const lines = linesOf(editor.document);
  if (!isInDay(lines, editor.selection.active.line)) {
    await window.showInformationMessage(l10n.t("A photo belongs to a day: put the cursor into one first."));
    return;
  }
  const home = await photoHome(shown, editor.document.uri);
  const photos = home && (await pick(home));
  if (home === undefined || photos === undefined) return;
  const facts: string[] = [];
  for (const photo of photos) {
    const path = await keepPhoto(home, photo);
    const caption = await window.showInputBox({
      title: l10n.t("Caption of {0}", path),
      prompt: l10n.t("What the photo shows. It may be left empty."),
    });
    facts.push(photoFact(path, caption ?? ""));
  }
  await write(editor, facts);
}

async function pick(home: UriType): Promise<readonly UriType[] | undefined> {
  return await window.showOpenDialog({
    canSelectMany: true,
    defaultUri: home,
    openLabel: l10n.t("Insert"),
    title: l10n.t("Photos for the day"),
    filters: { [l10n.t("Pictures")]: PHOTO_ENDINGS.flatMap((ending) => [ending, ending.toUpperCase()]) },
  });
}

/** On lines of their own below the cursor's; a blank line is used up. */
async function write(editor: TextEditor, facts: readonly string[]): Promise<void> {
  const lines = linesOf(editor.document);
  const { line } = editor.selection.active;
  const indent = indentAt(lines, line);
  const text = facts.map((fact) => indent + fact);
  const last = lastLineOfRecord(lines, line);
  await editor.edit((edit) => {
    const { range, isEmptyOrWhitespace } = editor.document.lineAt(line);
    if (isEmptyOrWhitespace) edit.replace(range, text.join("\n"));
    else edit.insert(new Position(last, lines.at(last).length), `\n${text.join("\n")}`);
  });
}

export function linesOf(document: TextEditor["document"]): Lines {
  return { count: document.lineCount, at: (line) => document.lineAt(line).text };
}
