/** Files that the editor reads for the server: of a workspace that is not on a disk of this machine. */
import type { FileStore } from "../workspace/file-store.ts";
import { isBelow } from "../workspace/file-store.ts";
import type { FileRequests, OfFile } from "./protocol.ts";
import { uriWithin } from "./uri.ts";

const LOG = /\.cotter$/;

/** The part of a connection that is needed: requests to the editor. */
export interface Asking {
  readonly sendRequest: <R>(method: string, params: OfFile) => Promise<R>;
}

export function editorFiles(editor: Asking): FileStore {
  const ask = <M extends keyof FileRequests>(method: M, uri: string) =>
    editor.sendRequest<FileRequests[M]["result"]>(method, { uri });
  const list = (uri: string) => ask("cotter/files/list", uri);
  const kind = (uri: string) => ask("cotter/files/kind", uri);
  return {
    logsBelow: async (folder) => {
      const found: string[] = [];
      const waiting = [folder];
      for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
        for (const { name, kind: entry, link } of await list(next)) {
          // Links are not followed: a build stays in its folder, and a circle of links ends.
          if (link || name.startsWith(".") || name === "node_modules") continue;
          if (entry === "folder") waiting.push(uriWithin(next, name));
          else if (LOG.test(name)) found.push(uriWithin(next, name));
        }
      }
      return found.sort();
    },
    logsIn: async (folder) =>
      (await list(folder))
        .filter((entry) => entry.kind === "file" && !entry.link && LOG.test(entry.name))
        .map(({ name }) => uriWithin(folder, name))
        .sort(),
    read: (uri) => ask("cotter/files/read", uri),
    isFile: async (uri) => (await kind(uri)) === "file",
    isFolder: async (uri) => (await kind(uri)) === "folder",
    isFileWithin: async (folder, relative) => {
      const uri = uriWithin(folder, relative);
      return isBelow(folder, uri) && uri !== folder && (await kind(uri)) === "file";
    },
  };
}
