/** What the editor tells of files and folders, carried into the workspace. */
import type { FileOperationRegistrationOptions } from "vscode-languageserver";
import { DidChangeWatchedFilesNotification, FileChangeType } from "vscode-languageserver";
import { textChange } from "./from-protocol.ts";
import type { Session } from "./session.ts";

const LOG = /\.cotter$/;
/** Files that a `photo:` may name. */
const PHOTOS = "**/*.{png,jpg,jpeg,webp,gif,avif,heic,PNG,JPG,JPEG,HEIC}";

/** What the editor is asked to tell of: logs, photos, and folders that could hold them. */
export const FILE_OPERATIONS: FileOperationRegistrationOptions = {
  filters: [
    { scheme: "file", pattern: { glob: "**/*.cotter", matches: "file" } },
    { scheme: "file", pattern: { glob: PHOTOS, matches: "file" } },
    { scheme: "file", pattern: { glob: "**", matches: "folder" } },
  ],
};

export function hearOfFiles(session: Session): void {
  const { connection, workspace } = session;
  connection.onDidOpenTextDocument(({ textDocument: { uri, text, version } }) => {
    void workspace.open(session.pathOf(uri), text, version);
    session.onChange();
  });
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
    workspace.edit(session.pathOf(uri), version, contentChanges.map(textChange));
    session.onChange();
  });
  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    const path = session.pathOf(uri);
    void workspace.close(path);
    for (const closed of session.onClosed) closed(path);
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    const removed = changes.filter(({ type }) => type === FileChangeType.Deleted);
    for (const { uri } of removed) workspace.removed(session.pathOf(uri));
    const other = changes.filter(({ type }) => type !== FileChangeType.Deleted);
    const paths = other.map(({ uri }) => session.pathOf(uri));
    void workspace.filesChanged(paths.filter((path) => LOG.test(path)));
    if (changes.some(({ uri }) => !LOG.test(uri))) workspace.photosMayHaveChanged();
    session.onChange();
  });
}

/** Asks the editor to watch files, where it can be asked. */
export async function watchFiles({ connection, client }: Session): Promise<void> {
  if (client.workspace?.didChangeWatchedFiles?.dynamicRegistration !== true) return;
  const watchers = [{ globPattern: "**/*.cotter" }, { globPattern: PHOTOS }];
  await connection.client.register(DidChangeWatchedFilesNotification.type, { watchers });
}
