/** What a command says that needs a build where there is none. */
import { commands, l10n, window } from "vscode";
import type { ShownBuild } from "../shown-build.ts";

export async function sayNoBuild(shown: ShownBuild): Promise<void> {
  const [offer, command] = shown.isServed
    ? [l10n.t("Open the example"), "cotter.openExample"]
    : [l10n.t("Start it again"), "cotter.restartServer"];
  const chosen = await window.showInformationMessage(noBuildWords(shown), offer);
  if (chosen === offer) await commands.executeCommand(command);
}

export function noBuildWords({ isServed }: ShownBuild): string {
  return isServed ? l10n.t("No build is open.") : l10n.t("Cotter's server is not running.");
}
