/** What the server declares, against what it is meant to do. */
import { expect, test } from "vitest";
import { serverCapabilities } from "../../server/language-server/capabilities.ts";

/** The features that a practitioner is promised, each by the capability that carries it. */
const PROMISED = [
  "textDocumentSync",
  "completionProvider",
  "hoverProvider",
  "signatureHelpProvider",
  "definitionProvider",
  "referencesProvider",
  "documentHighlightProvider",
  "renameProvider",
  "documentSymbolProvider",
  "workspaceSymbolProvider",
  "foldingRangeProvider",
  "selectionRangeProvider",
  "semanticTokensProvider",
  "inlayHintProvider",
  "codeLensProvider",
  "codeActionProvider",
  "documentFormattingProvider",
  "documentRangeFormattingProvider",
  "documentOnTypeFormattingProvider",
  "documentLinkProvider",
  "callHierarchyProvider",
];

test("every promised feature is declared, and no other", () => {
  const declared = Object.keys(serverCapabilities({}));
  expect(declared.filter((name) => name !== "workspace" && name !== "positionEncoding").sort()).toEqual(
    [...PROMISED].sort(),
  );
});

test("diagnostics can be asked for by a client that asks, of the whole workspace", () => {
  expect(serverCapabilities({ textDocument: { diagnostic: {} } }).diagnosticProvider).toMatchObject({
    interFileDependencies: true,
    workspaceDiagnostics: true,
  });
  expect(serverCapabilities({}).diagnosticProvider).toBeUndefined();
});

test("the parts of features that are promised with them", () => {
  const declared = serverCapabilities({ textDocument: { rename: { prepareSupport: true } } });
  expect(declared).toMatchObject({
    completionProvider: { resolveProvider: true },
    renameProvider: { prepareProvider: true },
    semanticTokensProvider: { full: { delta: true }, range: true },
    workspace: {
      workspaceFolders: { supported: true, changeNotifications: true },
      fileOperations: { willRename: { filters: expect.anything() } },
    },
  });
  expect(declared.codeActionProvider).toMatchObject({
    codeActionKinds: expect.arrayContaining(["quickfix", "source.fixAll.cotter"]),
  });
});
