/** Requests for what is told beside the text: hover, completion, signature help, hints, lines above blocks, links. */
import type { CompletionList } from "vscode-languageserver";
import { MarkupKind } from "vscode-languageserver";
import { codeLenses, lensWords } from "../features/code-lens.ts";
import type { Documented } from "../features/completion/item.ts";
import type { WrittenLaterOf } from "../features/hover/lateness.ts";
import { inlayHints } from "../features/inlay-hints.ts";
import { documentLinks } from "../features/links.ts";
import type { Session } from "../session.ts";
import { ofFile, ofFileLate } from "./of-file.ts";

export function answerTelling(session: Session): void {
  const { connection } = session;
  connection.onHover(
    ofFileLate(session, null, loadHover, ({ hover }, view, { position }) => {
      const { folder } = view.snapshot;
      const writtenLater: WrittenLaterOf = (fact) =>
        session.settings.writtenLater ? session.records.writtenLater(folder, fact) : undefined;
      return hover(view, position, writtenLater) ?? null;
    }),
  );
  connection.onSignatureHelp(
    ofFileLate(
      session,
      null,
      loadSignatureHelp,
      ({ signatureHelp }, view, { position }) => signatureHelp(view, position) ?? null,
    ),
  );
  connection.onDocumentLinks(ofFile(session, [], documentLinks));
  connection.languages.inlayHint.on(
    ofFile(session, [], (view, { range }) => inlayHints(view, range, session.settings.inlayHints)),
  );
  answerCompletion(session);
  answerCodeLens(session);
}

const loadHover = () => import("../features/hover/hover.ts");
const loadSignatureHelp = () => import("../features/signature-help.ts");
const loadCompletion = () => import("../features/completion/completion.ts");

const NOTHING_OFFERED: CompletionList = { isIncomplete: false, items: [] };

function answerCompletion(session: Session): void {
  const { connection } = session;
  const item = session.client.textDocument?.completion?.completionItem;
  const snippets = item?.snippetSupport === true;
  connection.onCompletion(
    ofFileLate(session, NOTHING_OFFERED, loadCompletion, ({ completion }, view, { position }) =>
      completion(view, position, snippets),
    ),
  );
  connection.onCompletionResolve(async (asked, token) => {
    const { uri, documented } = (asked.data ?? {}) as { uri?: string; documented?: Documented };
    if (uri === undefined || documented === undefined) return asked;
    const { documentation } = await import("../features/completion/resolve.ts");
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
