/** What handlers of requests share: the view of the file asked about, and edits as the client can take them. */
import type {
  CancellationToken,
  TextDocumentIdentifier,
  TextEdit,
  WorkspaceEdit,
} from "vscode-languageserver";
import { LSPErrorCodes, ResponseError } from "vscode-languageserver";
import type { SourceFile } from "../../build/source.ts";
import type { BuildSnapshot } from "../../workspace/build-snapshot.ts";
import type { Session } from "../session.ts";
import type { FileView } from "../view.ts";

export interface OfFile {
  readonly textDocument: TextDocumentIdentifier;
}

/** A handler that answers from the view of the file that a request is about. */
export function ofFile<P extends OfFile, R>(
  session: Session,
  nothing: R,
  compute: (view: FileView, params: P) => R,
) {
  return (params: P, token: CancellationToken): Promise<R> =>
    session.answer(params.textDocument.uri, token, nothing, (view) => compute(view, params));
}

/**
 * The same with a feature that is loaded when it is first asked for. Nothing that the editor sends is heard while that
 * happens, so the answer is about the text that the request was about.
 */
export function ofFileLate<F, P extends OfFile, R>(
  session: Session,
  nothing: R,
  load: () => Promise<F>,
  compute: (feature: F, view: FileView, params: P) => R,
) {
  return async (params: P, token: CancellationToken): Promise<R> => {
    const feature = await load();
    return session.answer(params.textDocument.uri, token, nothing, (view) => compute(feature, view, params));
  };
}

/** The same as the first for what the text alone decides. */
export function ofText<P extends OfFile, R>(
  session: Session,
  nothing: R,
  compute: (view: FileView, params: P) => R,
) {
  return (params: P, token: CancellationToken): Promise<R> =>
    session.answerFromText(params.textDocument.uri, token, nothing, (view) => compute(view, params));
}

/** Edits of several files as the client can take them: with the versions they are meant for, where it can check them. */
export function workspaceEdit(
  session: Session,
  snapshot: BuildSnapshot,
  edits: ReadonlyMap<SourceFile, readonly TextEdit[]>,
): WorkspaceEdit {
  const files = [...edits].map(([file, changes]) => ({ log: snapshot.logOf(file), changes: [...changes] }));
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

/** A refusal becomes the error that the editor shows to its user. */
export function unlessRefused<T extends object>(result: T | { readonly refused: string }): T {
  if ("refused" in result) throw new ResponseError(LSPErrorCodes.RequestFailed, result.refused);
  return result;
}
