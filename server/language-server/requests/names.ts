/** Requests about names: where they lead, where they are used, what depends on them, and giving them anew. */
import type { LocationLink } from "vscode-languageserver";
import { definition } from "../features/definition.ts";
import { dependencies, dependents, prepareDependents } from "../features/dependents.ts";
import { highlights, references } from "../features/references.ts";
import { prepareRename, rename } from "../features/rename.ts";
import { workspaceSymbols } from "../features/symbols.ts";
import type { Session } from "../session.ts";
import { ofFile, unlessRefused, workspaceEdit } from "./of-file.ts";

export function answerOfNames(session: Session): void {
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
    ofFile(session, null, (view, { position }) => {
      const found = prepareRename(view, position);
      return found === undefined ? null : unlessRefused(found);
    }),
  );
  connection.onRenameRequest(
    ofFile(session, null, (view, { position, newName }) =>
      workspaceEdit(session, view.snapshot, unlessRefused(rename(view, position, newName))),
    ),
  );
}

function answerDependents(session: Session): void {
  const { callHierarchy } = session.connection.languages;
  callHierarchy.onPrepare(ofFile(session, null, (view, { position }) => prepareDependents(view, position)));
  callHierarchy.onIncomingCalls(({ item }, token) =>
    session.answer(item.uri, token, [], (view) => dependents(view, item)),
  );
  callHierarchy.onOutgoingCalls(({ item }, token) =>
    session.answer(item.uri, token, [], (view) => dependencies(view, item)),
  );
}

function withoutOrigin({ targetUri, targetSelectionRange }: LocationLink) {
  return { uri: targetUri, range: targetSelectionRange };
}
