/** Requests for what is told beside the text: hover, completion, signature help, hints, lines above blocks, links. */
import type { CompletionList } from "vscode-languageserver";
import { MarkupKind } from "vscode-languageserver";
import { codeLenses, lensWords } from "../features/code-lens.ts";
import { completion } from "../features/completion/completion.ts";
import type { Documented } from "../features/completion/item.ts";
import { documentation } from "../features/completion/resolve.ts";
import { hover } from "../features/hover/hover.ts";
import type { WrittenLaterOf } from "../features/hover/lateness.ts";
import { inlayHints } from "../features/inlay-hints.ts";
import { documentLinks } from "../features/links.ts";
import { signatureHelp } from "../features/signature-help.ts";
import type { Session } from "../session.ts";
import { ofFile } from "./of-file.ts";

export function answerTelling(session: Session): void {
  const { connection } = session;
  connection.onHover(
    ofFile(session, null, (view, { position }) => {
      const { folder } = view.snapshot;
      const writtenLater: WrittenLaterOf = (fact) =>
        session.settings.writtenLater ? session.records.writtenLater(folder, fact) : undefined;
      return hover(view, position, writtenLater) ?? null;
    }),
  );
  connection.onSignatureHelp(
    ofFile(session, null, (view, { position }) => signatureHelp(view, position) ?? null),
  );
  connection.onDocumentLinks(ofFile(session, [], documentLinks));
  connection.languages.inlayHint.on(
    ofFile(session, [], (view, { range }) => inlayHints(view, range, session.settings.inlayHints)),
  );
  answerCompletion(session);
  answerCodeLens(session);
}

const NOTHING_OFFERED: CompletionList = { isIncomplete: false, items: [] };

function answerCompletion(session: Session): void {
  const { connection } = session;
  const item = session.client.textDocument?.completion?.completionItem;
  const snippets = item?.snippetSupport === true;
  connection.onCompletion(
    ofFile(session, NOTHING_OFFERED, (view, { position }) => completion(view, position, snippets)),
  );
  connection.onCompletionResolve((asked, token) => {
    const { uri, documented } = (asked.data ?? {}) as { uri?: string; documented?: Documented };
    if (uri === undefined || documented === undefined) return asked;
    return session.answer(uri, token, asked, (view) => {
      const value = documentation(view.recentBuild, documented);
      return value === "" ? asked : { ...asked, documentation: { kind: MarkupKind.Markdown, value } };
    });
  });
}

function answerCodeLens(session: Session): void {
  const { connection } = session;
  connection.onCodeLens(ofFile(session, [], (view) => (session.settings.codeLens ? codeLenses(view) : [])));
  connection.onCodeLensResolve((lens, token) => {
    const { uri, block } = lens.data as { uri: string; block: number };
    // A title without a command: it is there to be read.
    const withTitle = (title: string) => ({ ...lens, command: { title, command: "" } });
    return session.answer(uri, token, withTitle(""), (view) => withTitle(lensWords(view, block) ?? ""));
  });
}
