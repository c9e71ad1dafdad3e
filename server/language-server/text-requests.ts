/** Requests about a place or a stretch of one file, each handed to its feature. */
import type {
  CancellationToken,
  LocationLink,
  SemanticTokens,
  SemanticTokensDelta,
  TextDocumentIdentifier,
  TextEdit,
  WorkspaceEdit,
} from "vscode-languageserver";
import { LSPErrorCodes, MarkupKind, ResponseError } from "vscode-languageserver";
import type { SourceFile } from "../build/source.ts";
import { completion } from "./features/completion/completion.ts";
import type { Documented } from "./features/completion/item.ts";
import { documentation } from "./features/completion/resolve.ts";
import { definition } from "./features/definition.ts";
import { foldingRanges } from "./features/folding.ts";
import { hover } from "./features/hover/hover.ts";
import { highlights, references } from "./features/references.ts";
import type { Refusal } from "./features/rename.ts";
import { prepareRename, rename } from "./features/rename.ts";
import { selectionRanges } from "./features/selection.ts";
import { semanticTokens, tokensEdit } from "./features/semantic-tokens.ts";
import { documentSymbols, workspaceSymbols } from "./features/symbols.ts";
import type { Session } from "./session.ts";
import type { FileView } from "./view.ts";

interface OfFile {
  readonly textDocument: TextDocumentIdentifier;
}

/** A handler that answers from the view of the file that a request is about. */
function ofFile<P extends OfFile, R>(
  session: Session,
  nothing: R,
  compute: (view: FileView, params: P) => R,
) {
  return (params: P, token: CancellationToken): Promise<R> =>
    session.answer(params.textDocument.uri, token, nothing, (view) => compute(view, params));
}

export function answerTextRequests(session: Session): void {
  const { connection } = session;
  connection.onHover(ofFile(session, null, (view, { position }) => hover(view, position) ?? null));
  answerCompletion(session);
  answerOfNames(session);
  connection.onDocumentSymbol(ofFile(session, [], ({ document }) => documentSymbols(document)));
  connection.onWorkspaceSymbol(({ query }, token) =>
    session.answerOfAll(token, [], () =>
      workspaceSymbols(
        session.workspace.everyBuild(),
        query,
        (snapshot) => (file) => session.uriOf(snapshot.logOf(file).path),
      ),
    ),
  );
  connection.onFoldingRanges(ofFile(session, [], ({ document }) => foldingRanges(document)));
  connection.onSelectionRanges(
    ofFile(session, [], ({ document }, { positions }) => selectionRanges(document, positions)),
  );
  answerSemanticTokens(session);
}

function answerCompletion(session: Session): void {
  const { connection } = session;
  const item = session.client.textDocument?.completion?.completionItem;
  const snippets = item?.snippetSupport === true;
  connection.onCompletion(ofFile(session, [], (view, { position }) => completion(view, position, snippets)));
  connection.onCompletionResolve((asked, token) => {
    const { uri, documented } = (asked.data ?? {}) as { uri?: string; documented?: Documented };
    if (uri === undefined || documented === undefined) return asked;
    return session.answer(uri, token, asked, (view) => {
      const value = documentation(view.build, documented);
      return value === "" ? asked : { ...asked, documentation: { kind: MarkupKind.Markdown, value } };
    });
  });
}

function answerOfNames(session: Session): void {
  const { connection } = session;
  const linked = session.client.textDocument?.definition?.linkSupport === true;
  connection.onDefinition(
    ofFile(session, null, (view, { position }) => {
      const links = definition(view, position);
      return linked ? links : links.map(withoutOrigin);
    }),
  );
  connection.onReferences(
    ofFile(session, [], (view, { position, context }) =>
      references(view, position, context.includeDeclaration),
    ),
  );
  connection.onDocumentHighlight(ofFile(session, [], (view, { position }) => highlights(view, position)));
  connection.onPrepareRename(
    ofFile(session, null, (view, { position }) => {
      const found = prepareRename(view, position);
      return found === undefined ? null : unlessRefused(found);
    }),
  );
  connection.onRenameRequest(
    ofFile(session, null, (view, { position, newName }) =>
      workspaceEdit(session, view, unlessRefused(rename(view, position, newName))),
    ),
  );
}

function answerSemanticTokens(session: Session): void {
  const { connection } = session;
  /** The tokens that a file's editor holds. */
  const held = new Map<string, { readonly resultId: string; readonly data: number[] }>();
  let results = 0;
  const hold = (view: FileView, data: number[]): SemanticTokens => {
    const resultId = String(++results);
    held.set(view.log.path, { resultId, data });
    return { resultId, data };
  };
  const none: SemanticTokens = { data: [] };
  session.onClosed.add((path) => held.delete(path));
  connection.languages.semanticTokens.on(ofFile(session, none, (view) => hold(view, semanticTokens(view))));
  connection.languages.semanticTokens.onDelta(
    ofFile(
      session,
      none as SemanticTokens | SemanticTokensDelta,
      (view, { previousResultId }: OfFile & { previousResultId: string }) => {
        const before = held.get(view.log.path);
        const now = hold(view, semanticTokens(view));
        if (before?.resultId !== previousResultId) return now;
        const edits = tokensEdit(before.data, now.data);
        return { ...(now.resultId === undefined ? {} : { resultId: now.resultId }), edits };
      },
    ),
  );
  connection.languages.semanticTokens.onRange(
    ofFile(session, none, (view, { range }) => ({
      data: semanticTokens(view, { from: range.start.line, to: range.end.line }),
    })),
  );
}

/** Edits of several files as the client can take them: with the versions they are meant for, where it can check them. */
export function workspaceEdit(
  session: Session,
  view: FileView,
  edits: ReadonlyMap<SourceFile, readonly TextEdit[]>,
): WorkspaceEdit {
  const files = [...edits].map(([file, changes]) => ({
    log: view.snapshot.logOf(file),
    changes: [...changes],
  }));
  if (session.client.workspace?.workspaceEdit?.documentChanges !== true)
    return {
      changes: Object.fromEntries(files.map(({ log, changes }) => [session.uriOf(log.path), changes])),
    };
  return {
    documentChanges: files.map(({ log, changes }) => ({
      textDocument: { uri: session.uriOf(log.path), version: log.version ?? null },
      edits: changes,
    })),
  };
}

function withoutOrigin({ targetUri, targetSelectionRange }: LocationLink) {
  return { uri: targetUri, range: targetSelectionRange };
}

/** A refusal becomes the error that the editor shows to its user. */
function unlessRefused<T extends object>(result: T | Refusal): T {
  if ("refused" in result) throw new ResponseError(LSPErrorCodes.RequestFailed, result.refused);
  return result;
}
