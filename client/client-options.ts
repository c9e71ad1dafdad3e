/** How the client is set up, wherever it runs. */
import type { Disposable } from "vscode";
import { workspace } from "vscode";
import type { BaseLanguageClient, LanguageClientOptions, StaticFeature } from "vscode-languageclient";
import type { ClientNotifications } from "../server/language-server/protocol.ts";
import { calmRestart } from "./calm-restart.ts";

/**
 * @param schemes of the files that are logs. Not `git:` and the like: the two sides of a comparison are no builds of
 * their own.
 */
export function clientOptions(schemes: readonly string[]): LanguageClientOptions {
  return {
    documentSelector: [...logsOf(schemes)],
    synchronize: {
      configurationSection: "cotter",
      fileEvents: workspace.createFileSystemWatcher("**/*.cotter"),
    },
    initializationOptions: () => ({ trusted: workspace.isTrusted }),
    errorHandler: calmRestart(),
  };
}

/** Logs as the editor selects them. */
export function logsOf(
  schemes: readonly string[],
): readonly { readonly language: string; readonly scheme: string }[] {
  return schemes.map((scheme) => ({ language: "cotter", scheme }));
}

/** Tells the server once the user trusts the folders: only then may it start git. */
export function tellOfTrust(client: BaseLanguageClient): Disposable {
  const method: keyof ClientNotifications = "cotter/trusted";
  return workspace.onDidGrantWorkspaceTrust(() => {
    const granted: ClientNotifications[typeof method] = { trusted: true };
    if (client.isRunning()) void client.sendNotification(method, granted);
  });
}

/** Asks the server to tell of changes, which the views follow. */
export function askToBeTold(client: BaseLanguageClient): void {
  const feature: StaticFeature = {
    fillClientCapabilities: (capabilities) => {
      capabilities.experimental = {
        ...(capabilities.experimental as object),
        cotter: { buildChanged: true },
      };
    },
    initialize: () => undefined,
    getState: () => ({ kind: "static" }),
    clear: () => undefined,
  };
  client.registerFeature(feature);
}
