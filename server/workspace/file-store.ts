/** The one port through which the workspace reads files. Paths are absolute, or URIs: opaque but for their `/`. */
export interface FileStore {
  /** Every `.cotter` file below a folder, hidden folders and `node_modules` left out. */
  readonly logsBelow: (folder: string) => Promise<readonly string[]>;
  /** The `.cotter` files that stand in a folder itself. */
  readonly logsIn: (folder: string) => Promise<readonly string[]>;
  readonly read: (path: string) => Promise<string>;
  readonly isFile: (path: string) => Promise<boolean>;
  readonly isFolder: (path: string) => Promise<boolean>;
  /** Whether a relative path, as a log writes it, is a file within a folder, links followed. */
  readonly isFileWithin: (folder: string, relative: string) => Promise<boolean>;
}

/** The folder of a path; of a path without a folder the empty string. */
export function folderOf(path: string): string {
  const slash = path.lastIndexOf("/");
  return slash <= 0 ? path.slice(0, Math.max(slash, 0)) || (slash === 0 ? "/" : "") : path.slice(0, slash);
}

/** The end of all paths: of a file system, or of a URI with its scheme and authority. */
const ROOT = /^(?:[A-Za-z][A-Za-z0-9+.-]*:(?:\/\/[^/]*)?)?\/?$/;

/** The folder around a folder; undefined at the root, which no folder is around. */
export function folderAround(folder: string): string | undefined {
  if (ROOT.test(folder)) return undefined;
  const around = folderOf(folder);
  return around === folder ? undefined : around;
}

/** A path below a folder, relative to it; the path itself where it is not below. */
export function relativeTo(folder: string, path: string): string {
  const base = folder.endsWith("/") ? folder : `${folder}/`;
  return path.startsWith(base) ? path.slice(base.length) : path;
}

export function isBelow(folder: string, path: string): boolean {
  return path === folder || path.startsWith(folder.endsWith("/") ? folder : `${folder}/`);
}

/** Of several folders the innermost one that a path is below. */
export function innermost(folders: Iterable<string>, path: string): string | undefined {
  let found: string | undefined;
  for (const folder of folders)
    if (isBelow(folder, path) && (found === undefined || folder.length > found.length)) found = folder;
  return found;
}
