/** Files on the disk of this machine. */
import { readdir, readFile, realpath, stat } from "node:fs/promises";
import { resolve, sep } from "node:path";
import type { FileStore } from "./file-store.ts";

const ENDING = ".cotter";

export const disk: FileStore = {
  logsBelow: async (folder) => {
    const found: string[] = [];
    const waiting = [folder];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      for (const entry of await readdir(native(next), { withFileTypes: true })) {
        const path = join(next, entry.name);
        // Links are not followed: a build stays in its folder, and a circle of links ends.
        if (entry.isDirectory() && !entry.name.startsWith(".") && entry.name !== "node_modules")
          waiting.push(path);
        else if (entry.isFile() && entry.name.endsWith(ENDING)) found.push(path);
      }
    }
    return found.sort();
  },
  logsIn: async (folder) => {
    const entries = await readdir(native(folder), { withFileTypes: true }).catch(() => []);
    return entries
      .filter((entry) => entry.isFile() && entry.name.endsWith(ENDING))
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

/** A path of this machine with `/` between its names. */
export function withSlashes(path: string): string {
  return sep === "/" ? path : path.replaceAll(sep, "/");
}

function native(path: string): string {
  return sep === "/" ? path : path.replaceAll("/", sep);
}

function join(folder: string, name: string): string {
  return folder.endsWith("/") ? folder + name : `${folder}/${name}`;
}
