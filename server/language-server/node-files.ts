/** Files of this machine by their `file:` URIs. Files of other schemes are the editor's alone. */
import { fileURLToPath, pathToFileURL } from "node:url";
import { disk } from "../workspace/disk.ts";
import type { FileStore } from "../workspace/file-store.ts";
import { withSlashes } from "../workspace/slashes.ts";
import { normalUri } from "./uri.ts";

export const filesByUri: FileStore = {
  logsBelow: async (folder) => {
    const path = pathOf(folder);
    return path === undefined || !(await disk.isFolder(path)) ? [] : (await disk.logsBelow(path)).map(uriOf);
  },
  logsIn: async (folder) => {
    const path = pathOf(folder);
    return path === undefined ? [] : (await disk.logsIn(path)).map(uriOf);
  },
  read: async (uri) => {
    const path = pathOf(uri);
    if (path === undefined) throw new Error(`${uri} is not a file of this machine`);
    return await disk.read(path);
  },
  isFile: async (uri) => {
    const path = pathOf(uri);
    return path !== undefined && (await disk.isFile(path));
  },
  isFolder: async (uri) => {
    const path = pathOf(uri);
    return path !== undefined && (await disk.isFolder(path));
  },
  isFileWithin: async (folder, relative) => {
    const path = pathOf(folder);
    return path !== undefined && (await disk.isFileWithin(path, relative));
  },
};

/** Undefined for a URI of another scheme or host. */
export function pathOf(uri: string): string | undefined {
  if (!uri.startsWith("file:")) return undefined;
  try {
    return withSlashes(fileURLToPath(uri === "file://" ? "file:///" : uri));
  } catch {
    // The URI of another host, or one that names no file.
    return undefined;
  }
}

function uriOf(path: string): string {
  return normalUri(pathToFileURL(path).href);
}
