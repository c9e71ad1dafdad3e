/** *Start a diary*: a first page to fill in, which is kept where it says once it is saved. */
import type { Uri as UriType } from "vscode";
import { l10n, SnippetString, Uri, window, workspace } from "vscode";
import { quoted } from "../../grammar/quoted.ts";
import { folderNames } from "./folder-names.ts";
import { today } from "./today.ts";

/** As `cotter start` calls it. */
const FILE = "build.cotter";

/** Some of ISO 4217 to choose from, the one that is written by itself first; any other can be typed. */
const CURRENCIES = ["EUR", "GBP", "USD", "AUD", "CAD", "CHF", "DKK", "JPY", "NOK", "NZD", "PLN", "SEK"];

export async function startDiary(): Promise<void> {
  const name = await window.showInputBox({
    title: l10n.t("Start a diary"),
    prompt: l10n.t("The vehicle's name."),
    value: l10n.t("My car"),
  });
  if (name === undefined || name.trim() === "") return;
  const file = await placeFor(name.trim());
  if (file === undefined) return;
  if (await isTaken(file)) {
    // Chosen in a dialogue that asks whether to write over it: a diary is never written over.
    await window.showTextDocument(file);
    return;
  }
  // Not written yet, but bound for that place: saving asks nothing more.
  const document = await workspace.openTextDocument(file.with({ scheme: "untitled" }));
  const editor = await window.showTextDocument(document);
  // A list that opens while one writes takes the Tab that leads to the next place: a choice has its own, which leads on,
  // and a unit, behind whose space a list opens, is no place to fill in.
  const page = new SnippetString()
    .appendText(`vehicle ${quoted(name.trim())}\n  currency: `)
    .appendChoice(CURRENCIES)
    .appendText('\n\npart front.left.disc "Front left disc"\n  limit: thickness min ')
    .appendPlaceholder("8.4")
    .appendText(` mm\n\nday ${today()} `)
    .appendPlaceholder("2")
    .appendText(" h\n  ")
    .appendTabstop(0);
  await editor.insertSnippet(page);
}

/**
 * In the open folder, or in a folder of its own there where another diary is kept already: two vehicles in one folder
 * would be one build. Without an open folder, where one says.
 */
async function placeFor(name: string): Promise<UriType | undefined> {
  const [folder] = workspace.workspaceFolders ?? [];
  if (folder === undefined)
    return await window.showSaveDialog({
      title: l10n.t("Where the diary is kept"),
      saveLabel: l10n.t("Keep it here"),
      filters: { [l10n.t("Diary")]: ["cotter"] },
    });
  const isFirst = (await workspace.findFiles("**/*.cotter", undefined, 1)).length === 0;
  const here = Uri.joinPath(folder.uri, FILE);
  if (isFirst && !(await isTaken(here))) return here;
  for (const own of folderNames(name)) {
    const there = Uri.joinPath(folder.uri, own, FILE);
    if (!(await isTaken(there))) return there;
  }
  return undefined;
}

async function isTaken(file: UriType): Promise<boolean> {
  if (workspace.textDocuments.some(({ uri }) => uri.path === file.path)) return true;
  return await workspace.fs.stat(file).then(
    () => true,
    () => false,
  );
}
