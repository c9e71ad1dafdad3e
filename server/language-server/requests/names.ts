/** Requests about names: where they lead, where they are used, what depends on them, and giving them anew. */
import type { LocationLink } from "vscode-languageserver";
import { workspaceSymbols } from "../features/symbols.ts";
import type { Session } from "../session.ts";
import { ofFileLate, unlessRefused, workspaceEdit } from "./of-file.ts";

const loadDefinition = () => import("../features/definition.ts");
const loadReferences = () => import("../features/references.ts");
const loadRename = () => import("../features/rename.ts");
const loadDependents = () => import("../features/dependents.ts");

export function answerOfNames(session: Session): void {
  const { connection } = session;
  const linked = session.client.textDocument?.definition?.linkSupport === true;
  connection.onDefinition(
    ofFileLate(session, null, loadDefinition, ({ definition }, view, { position }) => {
      const links = definition(view, position);
      return linked ? links : links.map(withoutOrigin);
    }),
  );
  connection.onReferences(
    ofFileLate(session, [], loadReferences, ({ references }, view, { position, context }) =>
      references(view, position, context.includeDeclaration),
    ),
  );
  connection.onDocumentHighlight(
    ofFileLate(session, [], loadReferences, ({ highlights }, view, { position }) =>
      highlights(view, position),
    ),
  );
  connection.onWorkspaceSymbol(({ query }, token) =>
    session.answerOfAll(token, [], () =>
      workspaceSymbols(
        session.workspace.everyBuild(),
        query,
        (snapshot) => (file) => session.uriOf(snapshot.logOf(file).path),
      ),
    ),
  );
  answerRename(session);
  answerDependents(session);
}

function answerRename(session: Session): void {
  const { connection } = session;
  connection.onPrepareRename(
    ofFileLate(session, null, loadRename, ({ prepareRename }, view, { position }) => {
      const found = prepareRename(view, position);
      return found === undefined ? null : unlessRefused(found);
    }),
  );
  connection.onRenameRequest(
    ofFileLate(session, null, loadRename, ({ rename }, view, { position, newName }) =>
      workspaceEdit(session, view.snapshot, unlessRefused(rename(view, position, newName))),
    ),
  );
}

function answerDependents(session: Session): void {
  const { callHierarchy } = session.connection.languages;
  callHierarchy.onPrepare(
    ofFileLate(session, null, loadDependents, ({ prepareDependents }, view, { position }) =>
      prepareDependents(view, position),
    ),
  );
  callHierarchy.onIncomingCalls(async ({ item }, token) => {
    const { dependents } = await loadDependents();
    return session.answer(item.uri, token, [], (view) => dependents(view, item));
  });
  callHierarchy.onOutgoingCalls(async ({ item }, token) => {
    const { dependencies } = await loadDependents();
    return session.answer(item.uri, token, [], (view) => dependencies(view, item));
  });
}

function withoutOrigin({ targetUri, targetSelectionRange }: LocationLink) {
  return { uri: targetUri, range: targetSelectionRange };
}
