/** Why the record in git could not be read, for the one who asked. */
import { commands, l10n, window } from "vscode";
import type { Refusal } from "../../server/language-server/protocol.ts";

const WORDS: Readonly<Record<Refusal["why"], (message: string) => string>> = {
  "no git": () =>
    l10n.t("git is not installed, or not on the path: the record of what was written when is kept by it."),
  "no repository": () =>
    l10n.t(
      "This build is in no git repository, so nothing is recorded of it. “cotter start --git” makes one.",
    ),
  "not yours": () => l10n.t("git does not trust this repository, since it belongs to another user."),
  "no commit": () => l10n.t("Nothing of this build has been committed yet."),
  "not recorded": () => l10n.t("Nothing of this build has been committed yet."),
  "bad revision": (message) => l10n.t("That is no revision. {0}", message),
  "unknown revision": (message) => l10n.t("There is no such revision. {0}", message),
  "nothing by then": (message) => l10n.t("Nothing had been committed by that day. {0}", message),
  "no build": () => l10n.t("At that revision there was no build here."),
  failed: (message) => l10n.t("git could not answer. {0}", message),
  "not trusted": () => l10n.t("git is started only in a folder that you trust."),
  "not on disk": () => l10n.t("This build is not in a folder of this machine, so git has no record of it."),
  unclear: (message) => l10n.t("Nothing is recorded under the name {0}.", message),
};

export function refusalWords({ why, message }: Refusal): string {
  return WORDS[why](message);
}

export async function sayRefusal(refusal: Refusal): Promise<void> {
  if (refusal.why !== "not trusted") {
    await window.showWarningMessage(refusalWords(refusal));
    return;
  }
  const manage = l10n.t("Manage trust");
  const chosen = await window.showWarningMessage(refusalWords(refusal), manage);
  if (chosen === manage) await commands.executeCommand("workbench.trust.manage");
}
