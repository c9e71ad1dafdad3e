/** Requests about the shape of a text: outline, folding, selections, and what each word is. */
import type { SemanticTokens, SemanticTokensDelta } from "vscode-languageserver";
import { foldingRanges } from "../features/folding.ts";
import { selectionRanges } from "../features/selection.ts";
import { semanticTokens, tokensEdit } from "../features/semantic-tokens.ts";
import { documentSymbols } from "../features/symbols.ts";
import type { Session } from "../session.ts";
import type { FileView } from "../view.ts";
import type { OfFile } from "./of-file.ts";
import { ofFile, ofText } from "./of-file.ts";

export function answerOfStructure(session: Session): void {
  const { connection } = session;
  connection.onDocumentSymbol(ofText(session, [], ({ document }) => documentSymbols(document)));
  connection.onFoldingRanges(ofText(session, [], ({ document }) => foldingRanges(document)));
  connection.onSelectionRanges(
    ofText(session, [], ({ document }, { positions }) => selectionRanges(document, positions)),
  );
  answerSemanticTokens(session);
}

const NO_TOKENS: SemanticTokens = { data: [] };

function answerSemanticTokens(session: Session): void {
  const { semanticTokens: requests } = session.connection.languages;
  /** The tokens that a file's editor holds. */
  const held = new Map<string, { readonly resultId: string; readonly data: number[] }>();
  let results = 0;
  const hold = (view: FileView, data: number[]) => {
    const tokens = { resultId: String(++results), data };
    if (!view.snapshot.isRead) session.tokensAreOld = true;
    held.set(view.log.path, tokens);
    return tokens;
  };
  session.onClosed.add((path) => held.delete(path));
  requests.on(ofFile(session, NO_TOKENS, (view) => hold(view, semanticTokens(view))));
  requests.onDelta(
    ofFile<OfFile & { previousResultId: string }, SemanticTokens | SemanticTokensDelta>(
      session,
      NO_TOKENS,
      (view, { previousResultId }) => {
        const before = held.get(view.log.path);
        const now = hold(view, semanticTokens(view));
        if (before?.resultId !== previousResultId) return now;
        return { resultId: now.resultId, edits: tokensEdit(before.data, now.data) };
      },
    ),
  );
  requests.onRange(
    ofFile(session, NO_TOKENS, (view, { range }) => ({
      data: semanticTokens(view, { from: range.start.line, to: range.end.line }),
    })),
  );
}
