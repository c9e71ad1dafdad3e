/** Requests that change the text: mends and other actions, layout, and what moved files ask for. */
import type { CodeAction, Diagnostic, TextEdit, WorkspaceEdit } from "vscode-languageserver";
import type { SourceFile } from "../../build/source.ts";
import type { BuildSnapshot } from "../../workspace/build-snapshot.ts";
import type { Action } from "../features/actions/action.ts";
import { formatted, formattedBehind, formattedRange } from "../features/formatting.ts";
import { photosMoved } from "../features/moved-files.ts";
import type { Session } from "../session.ts";
import { rangeOf } from "../to-protocol.ts";
import { folderUri } from "../uri.ts";
import { ofFileLate, ofText, workspaceEdit } from "./of-file.ts";

const loadActions = () => import("../features/actions/actions.ts");

export function answerChanging(session: Session): void {
  const { connection } = session;
  connection.onCodeAction(
    ofFileLate(session, [], loadActions, ({ actions }, view, { range, context }) =>
      actions(view, range, context.only ?? []).map((action) =>
        codeAction(session, view.snapshot, action, context),
      ),
    ),
  );
  connection.onDocumentFormatting(ofText(session, [], ({ document }) => formatted(document)));
  connection.onDocumentRangeFormatting(
    ofText(session, [], ({ document }, { range }) => formattedRange(document, range)),
  );
  connection.onDocumentOnTypeFormatting(
    ofText(session, [], ({ document }, { position }) => formattedBehind(document, position)),
  );
  connection.workspace.onWillRenameFiles(({ files }, token) => {
    const moves = files.map(({ oldUri, newUri }) => ({ from: folderUri(oldUri), to: folderUri(newUri) }));
    return session.answerOfAll(token, null, () => {
      const edits = session.workspace
        .everyBuild()
        .map((build) => [build, photosMoved(build, moves)] as const);
      return mergedEdits(session, edits);
    });
  });
}

function codeAction(
  session: Session,
  snapshot: BuildSnapshot,
  { title, kind, preferred, complaint, edits }: Action,
  context: { readonly diagnostics: readonly Diagnostic[] },
): CodeAction {
  const { start } = complaint === undefined ? { start: undefined } : rangeOf(complaint.place);
  const answered = context.diagnostics.filter(
    ({ code, range }) =>
      code === complaint?.code &&
      range.start.line === start?.line &&
      range.start.character === start.character,
  );
  return {
    title,
    kind,
    ...(preferred ? { isPreferred: true } : {}),
    ...(answered.length === 0 ? {} : { diagnostics: answered }),
    edit: workspaceEdit(session, snapshot, edits),
  };
}

function mergedEdits(
  session: Session,
  builds: readonly (readonly [BuildSnapshot, ReadonlyMap<SourceFile, readonly TextEdit[]>])[],
): WorkspaceEdit | null {
  const edits = builds
    .filter(([, ofBuild]) => ofBuild.size > 0)
    .map(([build, ofBuild]) => workspaceEdit(session, build, ofBuild));
  if (edits.length === 0) return null;
  const changes: NonNullable<WorkspaceEdit["changes"]> = Object.assign(
    {},
    ...edits.map((edit) => edit.changes ?? {}),
  );
  const documentChanges = edits.flatMap((edit) => edit.documentChanges ?? []);
  return documentChanges.length > 0 ? { documentChanges } : { changes };
}
