/** What a command says that needs a build where there is none. */
import { commands, l10n, window } from "vscode";

export async function sayNoBuild(): Promise<void> {
  const example = l10n.t("Open the example");
  const chosen = await window.showInformationMessage(l10n.t("No build is open."), example);
  if (chosen === example) await commands.executeCommand("cotter.openExample");
}
