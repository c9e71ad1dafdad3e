/**
 * An editor asks again for hints, states and tokens of a file when that file changes. Of the other files it has to be
 * told: once things have been quiet for a moment, so that nothing flickers while one types.
 */
import { CodeLensRefreshRequest } from "vscode-languageserver";
import type { Session } from "./session.ts";

/** ms */
const QUIET = 400;

export function refreshOthers(session: Session): void {
  const { client, connection, host } = session;
  const { workspace } = client;
  let callOff: (() => void) | undefined;
  let byOthers = false;
  const refreshTokens = async () => {
    session.tokensAreOld = false;
    if (workspace?.semanticTokens?.refreshSupport !== true) return;
    // Read now, so that the tokens that are asked for next go by it.
    for (const snapshot of session.workspace.everyBuild()) snapshot.read();
    await connection.languages.semanticTokens.refresh();
  };
  const refresh = async () => {
    const typedOnly = !byOthers && session.workspace.openFiles().length < 2;
    byOthers = false;
    if (session.tokensAreOld || !typedOnly) await refreshTokens();
    if (typedOnly) return;
    if (workspace?.codeLens?.refreshSupport === true)
      await connection.sendRequest(CodeLensRefreshRequest.type);
    if (workspace?.inlayHint?.refreshSupport === true) await connection.languages.inlayHint.refresh();
  };
  session.onChanged.add((by) => {
    byOthers ||= by === "others";
    callOff?.();
    callOff = host.later(QUIET, () => {
      refresh().catch((error: unknown) => session.report(error));
    });
  });
}
