/** The files of a build as they were at a commit. */
import type { SourceFile } from "../build/source.ts";
import type { ReadLog } from "../workspace/build-folders.ts";
import { buildsAmong } from "../workspace/build-folders.ts";
import { isBelow, relativeTo } from "../workspace/file-store.ts";
import type { Commit } from "./commit.ts";
import type { Documents } from "./documents.ts";
import type { GitFault } from "./git-fault.ts";
import { isGitFault } from "./git-fault.ts";
import type { RecordedFile, Repository } from "./repository.ts";

export interface RecordedBuild {
  readonly files: readonly SourceFile[];
  /** Whether a photo, by its path in the build's folder, was there. */
  readonly photos: (photo: string) => boolean;
}

/** The build in the folder that the repository was asked about; one that has moved is found if it is the only one. */
export async function recordedBuild(
  repository: Repository,
  commit: Commit,
  revision: string,
  documents: Documents,
): Promise<RecordedBuild | GitFault> {
  const files = await repository.files(commit);
  if (isGitFault(files)) return files;
  const folder = rooted(repository.prefix.replace(/\/$/, ""));
  const logs = files.filter(({ path }) => isLog(path));
  const below = logs.filter(({ path }) => isBelow(folder, rooted(path)));
  const found =
    (await buildIn(repository, below, folder, documents)) ?? (await onlyBuild(repository, logs, documents));
  if (found === undefined) return { fault: "no build", revision, folder: folder.slice(1) };
  if (isGitFault(found)) return found;
  const photos = new Set(files.map(({ path }) => relativeTo(found.folder, rooted(path))));
  return {
    files: found.logs.map(({ path, document }) => ({ path: relativeTo(found.folder, path), document })),
    photos: (photo) => photos.has(photo),
  };
}

/** Paths are taken from the root of the repository, so that the root is a folder like any other. */
function rooted(path: string): string {
  return `/${path}`;
}

/** Files of the build, hidden folders and `node_modules` left out, as on disk. */
export function isLog(path: string): boolean {
  return path.endsWith(".cotter") && !/(?:^|\/)(?:\.[^/]*|node_modules)\//.test(path);
}

interface FoundBuild {
  readonly folder: string;
  readonly logs: readonly ReadLog[];
}

async function buildIn(
  repository: Repository,
  files: readonly RecordedFile[],
  folder: string,
  documents: Documents,
): Promise<FoundBuild | GitFault | undefined> {
  if (files.length === 0) return undefined;
  const logs = await readLogs(repository, files, documents);
  if (isGitFault(logs)) return logs;
  const builds = buildsAmong(logs, () => folder);
  return (
    builds.find((build) => build.hasVehicle && build.folder === folder) ??
    builds.find((build) => !build.hasVehicle)
  );
}

async function onlyBuild(
  repository: Repository,
  files: readonly RecordedFile[],
  documents: Documents,
): Promise<FoundBuild | GitFault | undefined> {
  const logs = await readLogs(repository, files, documents);
  if (isGitFault(logs)) return logs;
  const [only, another] = buildsAmong(logs, () => "/").filter(({ hasVehicle }) => hasVehicle);
  return another === undefined ? only : undefined;
}

async function readLogs(
  repository: Repository,
  files: readonly RecordedFile[],
  documents: Documents,
): Promise<ReadLog[] | GitFault> {
  const contents = await repository.contents(files.map(({ blob }) => blob));
  if (isGitFault(contents)) return contents;
  return files.flatMap(({ path, blob }) => {
    const content = contents.get(blob);
    if (content === undefined) return [];
    return [{ path: rooted(path), document: documents.read(path, content.toString("utf8")) }];
  });
}
