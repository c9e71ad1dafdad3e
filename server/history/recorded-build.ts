/** The files of a build as they were at a commit. */
import type { SourceFile } from "../build/source.ts";
import type { BuildFiles, ReadLog } from "../workspace/build-folders.ts";
import { buildsAmong, hasVehicle } from "../workspace/build-folders.ts";
import { folderOf, isBelow, relativeTo } from "../workspace/file-store.ts";
import type { Commit } from "./commit.ts";
import { Documents } from "./documents.ts";
import type { GitFault } from "./git-fault.ts";
import { isGitFault } from "./git-fault.ts";
import { isLog } from "./log-path.ts";
import { Renames } from "./renames.ts";
import type { RecordedFile, Repository } from "./repository.ts";

export interface RecordedBuild {
  /** Its folder then, from the root of the repository, with `/` behind it; empty for the root. */
  readonly prefix: string;
  /** None where the build was not there. */
  readonly files: readonly SourceFile[];
  /** Whether a photo, by its path in the build's folder, was there. */
  readonly photos: (photo: string) => boolean;
}

/**
 * The build in the folder that the repository was asked about; where it was not there, the one whose vehicle was moved
 * there since, as git knows.
 */
export async function recordedBuild(
  repository: Repository,
  commit: Commit,
  documents: Documents,
): Promise<RecordedBuild | GitFault> {
  const files = await repository.files(commit);
  if (isGitFault(files)) return files;
  const here = await logsOfBuilds(repository, files, folderAsked(repository), documents);
  if (isGitFault(here)) return here;
  const own = ownAmong(here, folderAsked(repository));
  if (own !== undefined) return recorded(own, files);
  const earlier = await earlierVehicle(repository, commit, documents);
  if (earlier !== undefined && isGitFault(earlier)) return earlier;
  if (earlier === undefined || !files.some(({ path }) => rooted(path) === earlier.path))
    return recorded({ folder: folderAsked(repository), logs: [] }, files);
  const folder = folderOf(earlier.path);
  const there = await logsOfBuilds(repository, files, folder, documents);
  if (isGitFault(there)) return there;
  return recorded(ownAmong(there, folder) ?? { folder, logs: [] }, files);
}

/** The folders of builds below the one that the repository was asked about, from its root, with `/` behind each. */
export async function foldersBelow(
  repository: Repository,
  commit: Commit,
): Promise<readonly string[] | GitFault> {
  const files = await repository.files(commit);
  if (isGitFault(files)) return files;
  const folder = folderAsked(repository);
  const builds = await logsOfBuilds(repository, files, folder, new Documents());
  if (isGitFault(builds)) return builds;
  return builds
    .filter((build) => build.hasVehicle && build.folder !== folder)
    .map((build) => `${build.folder.slice(1)}/`);
}

/** Paths are taken from the root of the repository, so that the root is a folder like any other. */
function rooted(path: string): string {
  return `/${path}`;
}

function folderAsked({ prefix }: Repository): string {
  return rooted(prefix.replace(/\/$/, ""));
}

function recorded(
  { folder, logs }: Pick<BuildFiles, "folder" | "logs">,
  files: readonly RecordedFile[],
): RecordedBuild {
  const photos = new Set(files.map(({ path }) => relativeTo(folder, rooted(path))));
  return {
    prefix: folder === "/" ? "" : `${folder.slice(1)}/`,
    files: logs.map(({ path, document }) => ({ path: relativeTo(folder, path), document })),
    photos: (photo) => photos.has(photo),
  };
}

/** The builds below a folder; its logs without a vehicle are one too. */
async function logsOfBuilds(
  repository: Repository,
  files: readonly RecordedFile[],
  folder: string,
  documents: Documents,
): Promise<readonly BuildFiles[] | GitFault> {
  const logs = files.filter(({ path }) => isLog(path) && isBelow(folder, rooted(path)));
  const contents = await repository.contents(logs.map(({ blob }) => blob));
  if (isGitFault(contents)) return contents;
  const read = logs.flatMap(({ path, blob }): readonly ReadLog[] => {
    const content = contents.get(blob);
    if (content === undefined) return [];
    return [{ path: rooted(path), document: documents.read(path, content.toString("utf8")) }];
  });
  return buildsAmong(read, () => folder);
}

function ownAmong(builds: readonly BuildFiles[], folder: string): BuildFiles | undefined {
  return (
    builds.find((build) => build.hasVehicle && build.folder === folder) ??
    builds.find((build) => !build.hasVehicle)
  );
}

/** Where the log with the vehicle of the last commit was at an earlier one; undefined where it has not moved. */
async function earlierVehicle(
  repository: Repository,
  commit: Commit,
  documents: Documents,
): Promise<{ readonly path: string } | GitFault | undefined> {
  const head = await repository.commit("HEAD");
  if (isGitFault(head)) return head;
  const files = await repository.files(head);
  if (isGitFault(files)) return files;
  const folder = folderAsked(repository);
  const builds = await logsOfBuilds(repository, files, folder, documents);
  if (isGitFault(builds)) return builds;
  const vehicle = ownAmong(builds, folder)?.logs.find(({ document }) => hasVehicle(document));
  if (vehicle === undefined) return undefined;
  const renames = await Renames.between(repository, commit, head);
  if (isGitFault(renames)) return renames;
  const path = rooted(renames.atFirst(vehicle.path.slice(1)));
  return path === vehicle.path ? undefined : { path };
}
