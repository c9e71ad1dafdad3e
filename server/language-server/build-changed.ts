/**
 * Tells a client that shows views of a build that they may be out of date: once things have been quiet for a moment, or
 * have not been for a while.
 */
import type { ClientCapabilities } from "vscode-languageserver";
import type { ViewNotifications } from "./protocol.ts";
import type { Session } from "./session.ts";

/** ms */
const QUIET = 300;
const LONGEST = 1500;

const CHANGED: keyof ViewNotifications = "cotter/buildChanged";

export function tellOfChanges(session: Session): void {
  if (!wantsToBeTold(session.client)) return;
  let waiting: { readonly since: number; readonly callOff: () => void } | undefined;
  session.onChanged.add(() => {
    waiting?.callOff();
    const now = session.host.now();
    const since = waiting?.since ?? now;
    const wait = Math.max(0, Math.min(QUIET, since + LONGEST - now));
    const callOff = session.host.later(wait, () => {
      waiting = undefined;
      session.connection.sendNotification(CHANGED).catch((error: unknown) => session.report(error));
    });
    waiting = { since, callOff };
  });
}

function wantsToBeTold({ experimental }: ClientCapabilities): boolean {
  const { cotter } = (experimental ?? {}) as { cotter?: { buildChanged?: unknown } };
  return cotter?.buildChanged === true;
}
