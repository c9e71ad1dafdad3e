import type { BaseLanguageClient } from "vscode-languageclient";

/**
 * Starts the server. The editor need not wait for it to activate the extension: what needs the server waits by itself. The
 * client tells of a start that fails; the reason is in its log.
 */
export function startInBackground(client: BaseLanguageClient): void {
  client.start().catch((error: unknown) => {
    client.outputChannel.appendLine(
      `the server did not start: ${error instanceof Error ? error.message : error}`,
    );
  });
}
