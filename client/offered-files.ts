/** Reads files for a server that has no disk: what the editor can open, the server can read. */
import { FileType, Uri, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { FileKind, FileRequests, FolderEntry } from "../server/language-server/protocol.ts";

export function offerFiles(client: BaseLanguageClient): void {
  answer(client, "cotter/files/read", async (uri) =>
    new TextDecoder().decode(await workspace.fs.readFile(uri)),
  );
  answer(client, "cotter/files/list", entriesOf);
  answer(client, "cotter/files/kind", kindOf);
}

function answer<M extends keyof FileRequests>(
  client: BaseLanguageClient,
  method: M,
  read: (uri: Uri) => Promise<FileRequests[M]["result"]>,
): void {
  client.onRequest(method, ({ uri }: FileRequests[M]["params"]) => read(Uri.parse(uri, true)));
}

async function entriesOf(folder: Uri): Promise<FolderEntry[]> {
  // A folder that is not there, or that its provider refuses to show, has nothing in it.
  const entries = await workspace.fs.readDirectory(folder).then(
    (found) => found,
    () => [],
  );
  return entries.flatMap(([name, type]) => {
    const kind = kindOfType(type);
    return kind === null ? [] : [{ name, kind, link: (type & FileType.SymbolicLink) !== 0 }];
  });
}

async function kindOf(uri: Uri): Promise<FileKind | null> {
  return await workspace.fs.stat(uri).then(
    ({ type }) => kindOfType(type),
    () => null,
  );
}

function kindOfType(type: FileType): FileKind | null {
  if ((type & FileType.Directory) !== 0) return "folder";
  return (type & FileType.File) !== 0 ? "file" : null;
}
