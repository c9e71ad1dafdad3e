/** What the server declares that it can do for a client. */
import type { ClientCapabilities, ServerCapabilities } from "vscode-languageserver";
import { TextDocumentSyncKind } from "vscode-languageserver";
import { FIX_ALL, QUICK_FIX, REWRITE, WRITE_DOWN } from "./features/actions/action.ts";
import { TOKEN_MODIFIERS, TOKEN_TYPES } from "./features/token-legend.ts";
import { FILE_OPERATIONS } from "./files.ts";

export function serverCapabilities({ textDocument }: ClientCapabilities): ServerCapabilities {
  return {
    positionEncoding: "utf-16",
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    ...(textDocument?.diagnostic === undefined
      ? {}
      : {
          diagnosticProvider: {
            identifier: "cotter",
            interFileDependencies: true,
            workspaceDiagnostics: true,
          },
        }),
    hoverProvider: true,
    completionProvider: { resolveProvider: true, triggerCharacters: [" ", ".", "{", '"'] },
    signatureHelpProvider: { triggerCharacters: [":", " ", "(", ","], retriggerCharacters: [" ", ","] },
    inlayHintProvider: true,
    codeLensProvider: { resolveProvider: true },
    documentLinkProvider: { resolveProvider: false },
    codeActionProvider: { codeActionKinds: [QUICK_FIX, REWRITE, WRITE_DOWN, FIX_ALL] },
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: "\n" },
    callHierarchyProvider: true,
    documentSymbolProvider: true,
    workspaceSymbolProvider: true,
    definitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    renameProvider: textDocument?.rename?.prepareSupport === true ? { prepareProvider: true } : true,
    foldingRangeProvider: true,
    selectionRangeProvider: true,
    semanticTokensProvider: {
      legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: [...TOKEN_MODIFIERS] },
      full: { delta: true },
      range: true,
    },
    workspace: {
      workspaceFolders: { supported: true, changeNotifications: true },
      fileOperations: {
        didCreate: FILE_OPERATIONS,
        didDelete: FILE_OPERATIONS,
        didRename: FILE_OPERATIONS,
        willRename: FILE_OPERATIONS,
      },
    },
  };
}
