/** How the client is set up, wherever it runs. */
import { workspace } from "vscode";
import type { BaseLanguageClient, LanguageClientOptions, StaticFeature } from "vscode-languageclient";
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
    errorHandler: calmRestart(),
  };
}

/** Logs as the editor selects them. */
export function logsOf(
  schemes: readonly string[],
): readonly { readonly language: string; readonly scheme: string }[] {
  return schemes.map((scheme) => ({ language: "cotter", scheme }));
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
