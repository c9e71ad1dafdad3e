/**
 * Files on the disk of this machine for a program that has nothing else to do meanwhile: each is read at once, which spares
 * it the threads that wait for several, and the part of Node that speaks to them.
 */
import type { Dirent } from "node:fs";
import { readdirSync, readFileSync, realpathSync, statSync } from "node:fs";
import { resolve, sep } from "node:path";
import type { FileStore } from "../workspace/file-store.ts";
import { isLog, isOpenFolder } from "../workspace/log-files.ts";
import { join, native } from "../workspace/slashes.ts";

export const diskAtOnce: FileStore = {
  logsBelow: (folder) =>
    atOnce(() => {
      const found: string[] = [];
      const waiting = [folder];
      for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
        for (const entry of entriesOf(next)) {
          if (isOpenFolder(entry)) waiting.push(join(next, entry.name));
          else if (isLog(entry)) found.push(join(next, entry.name));
        }
      }
      return found.sort();
    }),
  logsIn: (folder) =>
    atOnce(() =>
      unless([], () => entriesOf(folder))
        .filter(isLog)
        .map(({ name }) => join(folder, name))
        .sort(),
    ),
  read: (path) => atOnce(() => readFileSync(native(path), "utf8")),
  isFile: (path) => atOnce(() => unless(false, () => statSync(native(path)).isFile())),
  isFolder: (path) => atOnce(() => unless(false, () => statSync(native(path)).isDirectory())),
  isFileWithin: (folder, relative) =>
    atOnce(() =>
      unless(false, () => {
        const base = realpathSync(native(folder));
        const found = realpathSync(resolve(base, native(relative)));
        return found.startsWith(base.endsWith(sep) ? base : base + sep) && statSync(found).isFile();
      }),
    ),
};

function entriesOf(folder: string): Dirent[] {
  return readdirSync(native(folder), { withFileTypes: true });
}

/** What is thrown becomes a rejection. */
function atOnce<T>(find: () => T): Promise<T> {
  return new Promise((resolve) => resolve(find()));
}

function unless<T>(fails: T, find: () => T): T {
  try {
    return find();
  } catch {
    return fails;
  }
}
