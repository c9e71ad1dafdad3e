/** Brings a photo into the build: one that is in its folder stays, any other is copied beside the log, over nothing. */
import type { Uri as UriType } from "vscode";
import { FileSystemError, l10n, Uri, window, workspace } from "vscode";
import type { ShownBuild } from "../shown-build.ts";
import { namesFor, PHOTO_FOLDER, pathWithin } from "./photo-names.ts";

/** The folder that photos of the build are relative to; undefined, and said so, where there is none on a disk. */
export async function photoHome(shown: ShownBuild): Promise<UriType | undefined> {
  const folder = shown.overview === undefined ? undefined : shown.uriOf({ uri: shown.overview.folder });
  const writable = folder && workspace.fs.isWritableFileSystem(folder.scheme);
  if (folder === undefined || folder.scheme === "untitled" || folder.path === "" || writable === false) {
    await window.showInformationMessage(l10n.t("Save the log to a folder first: photos are kept beside it."));
    return undefined;
  }
  return folder;
}

/** The path of a photo as the log writes it. */
export async function keepPhoto(home: UriType, photo: UriType): Promise<string> {
  const sameDisk = photo.scheme === home.scheme && photo.authority === home.authority;
  const within = sameDisk ? pathWithin(home.path, photo.path) : undefined;
  if (within !== undefined) return within;
  return await keepNew(home, photo.path, (target) => workspace.fs.copy(photo, target, { overwrite: false }));
}

/** The same of a picture that is in no file yet. */
export async function keepPicture(home: UriType, name: string, picture: Uint8Array): Promise<string> {
  return await keepNew(home, name, async (target) => {
    if (await isThere(target)) throw FileSystemError.FileExists(target);
    await workspace.fs.writeFile(target, picture);
  });
}

async function keepNew(
  home: UriType,
  name: string,
  write: (target: UriType) => Thenable<void>,
): Promise<string> {
  await workspace.fs.createDirectory(Uri.joinPath(home, PHOTO_FOLDER));
  for (const free of namesFor(name)) {
    try {
      await write(Uri.joinPath(home, PHOTO_FOLDER, free));
      return `${PHOTO_FOLDER}/${free}`;
    } catch (error) {
      if (!(error instanceof FileSystemError) || error.code !== "FileExists") throw error;
    }
  }
  throw new Error("no name is free");
}

async function isThere(uri: UriType): Promise<boolean> {
  return await workspace.fs.stat(uri).then(
    () => true,
    () => false,
  );
}
