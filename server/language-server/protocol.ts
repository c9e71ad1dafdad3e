/** What the client and the server say to each other beyond the Language Server Protocol: names of methods and types. */

/**
 * Files that the client reads for a server that has no disk, as in a browser. Each is a request from the server to the
 * client, about a file or folder by its URI, of the schemes that the client opens.
 */
export const FILE_REQUESTS = {
  /** `FileParams` → `string`: the text of a file, read as UTF-8. Refused where there is none. */
  read: "cotter/files/read",
  /** `FileParams` → `FolderEntry[]`: what stands in a folder; nothing where there is no such folder. */
  list: "cotter/files/list",
  /** `FileParams` → `FileKind | null`: what a URI leads to; null where it leads to nothing. */
  kind: "cotter/files/kind",
} as const;

export interface FileParams {
  readonly uri: string;
}

/** Links are what they lead to. */
export type FileKind = "file" | "folder";

export interface FolderEntry {
  /** Without the folder, not escaped. */
  readonly name: string;
  readonly kind: FileKind;
  /** A link is not followed when a folder is searched. */
  readonly link: boolean;
}
