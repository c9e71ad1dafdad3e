/** What the editor tells of files and folders, carried into the workspace. */
import type { FileOperationRegistrationOptions } from "vscode-languageserver";
import { DidChangeWatchedFilesNotification, FileChangeType } from "vscode-languageserver";
import { textChange } from "./from-protocol.ts";
import type { Session } from "./session.ts";
import { folderUri } from "./uri.ts";

const LOG = /\.cotter$/;
/** Files that a `photo:` may name. */
const PHOTOS = "**/*.{png,jpg,jpeg,webp,gif,avif,heic,PNG,JPG,JPEG,WEBP,GIF,AVIF,HEIC}";

/** What the editor is asked to tell of: logs, photos, and folders that could hold them. */
export const FILE_OPERATIONS: FileOperationRegistrationOptions = {
  filters: [
    { pattern: { glob: "**/*.cotter", matches: "file" } },
    { pattern: { glob: PHOTOS, matches: "file" } },
    { pattern: { glob: "**", matches: "folder" } },
  ],
};

export function hearOfFiles(session: Session): void {
  const { connection, workspace } = session;
  // Nothing else waits for what is begun here: a failure is written down, and must not end the server.
  const begin = (work: Promise<void>) => void work.catch((error: unknown) => session.report(error));
  connection.onDidOpenTextDocument(({ textDocument: { uri, text, version } }) => {
    if (typeof text !== "string") throw new TypeError("a file was opened without its text");
    begin(workspace.open(session.pathOf(uri), text, version));
    session.changed("others");
  });
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
    workspace.edit(session.pathOf(uri), version, contentChanges.map(textChange));
    session.changed("typing");
  });
  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    const path = session.pathOf(uri);
    begin(workspace.close(path));
    for (const closed of session.onClosed) closed(path);
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    const removed = changes.filter(({ type }) => type === FileChangeType.Deleted);
    for (const { uri } of removed) workspace.removed(session.pathOf(uri));
    const other = changes.filter(({ type }) => type !== FileChangeType.Deleted);
    const paths = other.map(({ uri }) => session.pathOf(uri));
    begin(workspace.filesChanged(paths.filter((path) => LOG.test(path))));
    if (changes.some(({ uri }) => !LOG.test(uri))) workspace.photosMayHaveChanged();
    session.changed("others");
  });
}

/** What is done with files in the editor itself. */
export function hearOfFileOperations(session: Session): void {
  const { connection, workspace } = session;
  const come = (uris: readonly string[]) => {
    void workspace.filesChanged(uris.map((uri) => session.pathOf(uri)).filter((path) => LOG.test(path)));
    const folders = uris.filter((uri) => !LOG.test(uri)).map(folderUri);
    for (const folder of folders) void workspace.folderChanged(folder);
    workspace.photosMayHaveChanged();
    session.changed("others");
  };
  const go = (uris: readonly string[]) => {
    for (const uri of uris) workspace.removed(folderUri(uri));
    workspace.photosMayHaveChanged();
    session.changed("others");
  };
  connection.workspace.onDidCreateFiles(({ files }) => come(files.map(({ uri }) => uri)));
  connection.workspace.onDidDeleteFiles(({ files }) => go(files.map(({ uri }) => uri)));
  connection.workspace.onDidRenameFiles(({ files }) => {
    go(files.map(({ oldUri }) => oldUri));
    come(files.map(({ newUri }) => newUri));
  });
}

/** Asks the editor to watch files, where it can be asked. */
export async function watchFiles({ connection, client }: Session): Promise<void> {
  if (client.workspace?.didChangeWatchedFiles?.dynamicRegistration !== true) return;
  const watchers = [{ globPattern: "**/*.cotter" }, { globPattern: PHOTOS }];
  await connection.client.register(DidChangeWatchedFilesNotification.type, { watchers });
}
