/** What happens when the server ends by itself: it is started again, with a calm word; after too many times it is left. */
import { commands, l10n, window } from "vscode";
import type { CloseHandlerResult, ErrorHandler } from "vscode-languageclient";
import { CloseAction, ErrorAction } from "vscode-languageclient";
import { Accidents } from "./accidents.ts";

export function calmRestart(): ErrorHandler {
  const accidents = new Accidents();
  return {
    // A message that did not get through: only that is lost, and the next change brings it.
    error: () => ({ action: ErrorAction.Continue }),
    closed: () => (accidents.another(Date.now()) ? startedAgain() : leftAlone()),
  };
}

function startedAgain(): CloseHandlerResult {
  const words = l10n.t("Cotter's server stopped and was started again. Your logs are as you left them.");
  window.setStatusBarMessage(`$(debug-restart) ${words}`, 8000);
  return { action: CloseAction.Restart, message: words, handled: true };
}

function leftAlone(): CloseHandlerResult {
  const words = l10n.t(
    "Cotter's server stopped several times and was not started again. Your logs are as you left them, but unchecked.",
  );
  const again = l10n.t("Start it again");
  void window.showWarningMessage(words, again).then((chosen) => {
    if (chosen === again) void commands.executeCommand("cotter.restartServer");
  });
  return { action: CloseAction.DoNotRestart, message: words, handled: true };
}
