/** A disk in memory, for workspaces that are tried without one. */
import type { FileStore } from "../../server/workspace/file-store.ts";
import { folderOf, isBelow } from "../../server/workspace/file-store.ts";

export class MemoryFiles implements FileStore {
  readonly texts = new Map<string, string>();

  logsBelow = (folder: string) => Promise.resolve(this.logs().filter((path) => isBelow(folder, path)));
  logsIn = (folder: string) => Promise.resolve(this.logs().filter((path) => folderOf(path) === folder));
  read = (path: string) => {
    const text = this.texts.get(path);
    return text === undefined ? Promise.reject(new Error(`no ${path}`)) : Promise.resolve(text);
  };
  isFile = (path: string) => Promise.resolve(this.texts.has(path));
  isFolder = (path: string) => Promise.resolve([...this.texts.keys()].some((each) => isBelow(path, each)));
  isFileWithin = (folder: string, relative: string) =>
    Promise.resolve(this.texts.has(`${folder}/${relative}`));

  private logs(): readonly string[] {
    return [...this.texts.keys()].filter((path) => path.endsWith(".cotter"));
  }
}
