/** Brings a photo into the build: one that is in its folder stays, any other is copied beside the log, over nothing. */
import type { Uri as UriType } from "vscode";
import { FileSystemError, l10n, Uri, window, workspace } from "vscode";
import { sayNoBuild } from "../commands/no-build.ts";
import type { ShownBuild } from "../shown-build.ts";
import { namesFor, PHOTO_FOLDER, pathWithin } from "./photo-names.ts";

/**
 * The folder that photos of a log's build are relative to; undefined, and said so, where there is none on a disk.
 * @param log not always of the build that is shown: two may stand side by side
 */
export async function photoHome(shown: ShownBuild, log: UriType): Promise<UriType | undefined> {
  const overview = await shown.askOf(shown.asLog(log), "cotter/overview", {});
  if (overview === null) {
    await sayNoBuild(shown);
    return undefined;
  }
  const folder = shown.uriOf({ uri: overview.folder });
  const writable = workspace.fs.isWritableFileSystem(folder.scheme);
  if (folder.scheme === "untitled" || folder.path === "" || writable === false) {
    await window.showInformationMessage(l10n.t("Save the log to a folder first: photos are kept beside it."));
    return undefined;
  }
  return folder;
}

/** The path of a photo as the log writes it, if it is in the build's folder. */
export function pathInside(home: UriType, photo: UriType): string | undefined {
  const sameDisk = photo.scheme === home.scheme && photo.authority === home.authority;
  return sameDisk ? pathWithin(home.path, photo.path) : undefined;
}

/** The same of any photo: one from outside is copied. */
export async function keepPhoto(home: UriType, photo: UriType): Promise<string> {
  const inside = pathInside(home, photo);
  if (inside !== undefined) return inside;
  await workspace.fs.createDirectory(Uri.joinPath(home, PHOTO_FOLDER));
  for (;;) {
    const path = await freePath(home, photo.path, new Set());
    try {
      await workspace.fs.copy(photo, Uri.joinPath(home, path), { overwrite: false });
      return path;
    } catch (error) {
      // Another program has taken the name meanwhile.
      if (!(error instanceof FileSystemError) || error.code !== "FileExists") throw error;
    }
  }
}

/** A path for a new photo at which nothing is yet. @param taken paths that are spoken for */
export async function freePath(home: UriType, name: string, taken: ReadonlySet<string>): Promise<string> {
  for (const free of namesFor(name)) {
    const path = `${PHOTO_FOLDER}/${free}`;
    if (!taken.has(path) && !(await isThere(Uri.joinPath(home, path)))) return path;
  }
  throw new Error("no name is free");
}

async function isThere(uri: UriType): Promise<boolean> {
  return await workspace.fs.stat(uri).then(
    () => true,
    () => false,
  );
}
