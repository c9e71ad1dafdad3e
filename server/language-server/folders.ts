/** The folders that the editor has open: read at the start, and when they come and go. */
import type { InitializeParams } from "vscode-languageserver";
import type { Session } from "./session.ts";
import { folderUri, normalUri } from "./uri.ts";

/** Reading that takes longer than this (ms) is shown in the editor. */
const SHOWN_AFTER = 500;

/** The folders of a client's first message, by the newest of the ways in which clients say them. */
export function foldersOf({ workspaceFolders, rootUri, rootPath }: InitializeParams): readonly string[] {
  if (workspaceFolders) return workspaceFolders.map(({ uri }) => folderUri(uri));
  if (rootUri) return [folderUri(rootUri)];
  return rootPath ? [folderUri(normalUri(`file://${rootPath.startsWith("/") ? "" : "/"}${rootPath}`))] : [];
}

export async function readFolders(session: Session, folders: readonly string[]): Promise<void> {
  for (const folder of folders) await readFolder(session, folder);
}

export function hearOfFolders(session: Session): void {
  if (session.client.workspace?.workspaceFolders !== true) return;
  session.connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
    for (const { uri } of removed) session.workspace.removeRoot(folderUri(uri));
    session.changed("others");
    const folders = added.map(({ uri }) => folderUri(uri));
    readFolders(session, folders).catch((error: unknown) => session.report(error));
  });
}

async function readFolder(session: Session, folder: string): Promise<void> {
  const began = session.host.now();
  const shown = progressIn(session);
  try {
    await session.workspace.addRoot(folder, (read, of) => {
      if (session.host.now() - began > SHOWN_AFTER) shown.show(read, of);
      return !shown.cancelled();
    });
  } finally {
    shown.done();
  }
}

/** A progress bar that appears when it is first shown. */
function progressIn({ connection, client }: Session) {
  type Reporter = Awaited<ReturnType<typeof connection.window.createWorkDoneProgress>>;
  let asked = false;
  let ended = false;
  let reporter: Reporter | undefined;
  const begin = async () => {
    const created = await connection.window.createWorkDoneProgress();
    if (ended) return;
    reporter = created;
    reporter.begin("Cotter: reading the logs", 0, undefined, true);
  };
  return {
    show: (read: number, of: number) => {
      if (!asked && client.window?.workDoneProgress === true) {
        asked = true;
        // An editor that refuses a progress bar gets none.
        begin().catch(() => undefined);
      }
      reporter?.report(Math.round((read / of) * 100), `${read} of ${of}`);
    },
    cancelled: () => reporter?.token.isCancellationRequested === true,
    done: () => {
      ended = true;
      reporter?.done();
    },
  };
}
