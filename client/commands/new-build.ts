/** *New build*: a first page to fill in and save where it belongs. */
import { l10n, SnippetString, window, workspace } from "vscode";
import { quoted } from "../../grammar/quoted.ts";
import { today } from "./today.ts";

export async function newBuild(): Promise<void> {
  const name = await window.showInputBox({
    title: l10n.t("New build"),
    prompt: l10n.t("The vehicle's name."),
    value: l10n.t("My car"),
  });
  if (name === undefined || name.trim() === "") return;
  const document = await workspace.openTextDocument({ language: "cotter" });
  const editor = await window.showTextDocument(document);
  const page = new SnippetString()
    .appendText(`vehicle ${quoted(name.trim())}\n  currency: `)
    .appendPlaceholder("EUR")
    .appendText('\n\npart front.left.disc "Front left disc"\n  limit: thickness min ')
    .appendPlaceholder("8.4")
    .appendText(` mm\n\nday ${today()} `)
    .appendPlaceholder("2 h")
    .appendText("\n  ")
    .appendTabstop(0);
  await editor.insertSnippet(page);
}
