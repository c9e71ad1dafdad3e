/** What the server declares that it can do for a client. */
import type { ClientCapabilities, ServerCapabilities } from "vscode-languageserver";
import { TextDocumentSyncKind } from "vscode-languageserver";

export function serverCapabilities(client: ClientCapabilities): ServerCapabilities {
  return {
    positionEncoding: "utf-16",
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    ...(client.textDocument?.diagnostic === undefined
      ? {}
      : {
          diagnosticProvider: {
            identifier: "cotter",
            interFileDependencies: true,
            workspaceDiagnostics: true,
          },
        }),
    workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
  };
}
