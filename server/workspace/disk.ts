/** Files on the disk of this machine. */
import { readdir, readFile, realpath, stat } from "node:fs/promises";
import { resolve, sep } from "node:path";
import type { FileStore } from "./file-store.ts";
import { isLog, isOpenFolder } from "./log-files.ts";
import { join, native } from "./slashes.ts";

export const disk: FileStore = {
  logsBelow: async (folder) => {
    const found: string[] = [];
    const waiting = [folder];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      for (const entry of await readdir(native(next), { withFileTypes: true })) {
        if (isOpenFolder(entry)) waiting.push(join(next, entry.name));
        else if (isLog(entry)) found.push(join(next, entry.name));
      }
    }
    return found.sort();
  },
  logsIn: async (folder) => {
    const entries = await readdir(native(folder), { withFileTypes: true }).catch(() => []);
    return entries
      .filter(isLog)
      .map(({ name }) => join(folder, name))
      .sort();
  },
  read: (path) => readFile(native(path), "utf8"),
  isFile: (path) =>
    stat(native(path)).then(
      (found) => found.isFile(),
      () => false,
    ),
  isFolder: (path) =>
    stat(native(path)).then(
      (found) => found.isDirectory(),
      () => false,
    ),
  isFileWithin: async (folder, relative) => {
    try {
      const base = await realpath(native(folder));
      const found = await realpath(resolve(base, native(relative)));
      return found.startsWith(base.endsWith(sep) ? base : base + sep) && (await stat(found)).isFile();
    } catch {
      return false;
    }
  },
};
