/** From a place on disk to the build around it. */
import { Document } from "../../grammar/document.ts";
import type { SourceFile } from "../build/source.ts";
import type { BuildFiles, ReadLog } from "./build-folders.ts";
import { buildsAmong, hasVehicle, sharedFolder } from "./build-folders.ts";
import type { FileStore } from "./file-store.ts";
import { folderAround, folderOf, relativeTo } from "./file-store.ts";

export type OpenedBuild = {
  readonly is: "build";
  readonly folder: string;
  readonly files: readonly SourceFile[];
  readonly hasVehicle: boolean;
};

/** Why there is no one build at a place. */
export type OpenFault =
  | { readonly is: "nothing there"; readonly path: string }
  | { readonly is: "no log"; readonly path: string }
  | { readonly is: "several builds"; readonly path: string; readonly folders: readonly string[] };

/**
 * The build around a file or folder: that of the nearest folder upwards with a vehicle; below a folder without one,
 * the only build there, or its logs without a vehicle; a file alone where there is no vehicle around it.
 *
 * @param readText how the text of a log becomes a document
 */
export async function openBuild(
  store: FileStore,
  path: string,
  readText: ReadText = Document.read,
): Promise<OpenedBuild | OpenFault> {
  const read: LogsRead = { readText, logs: new Map() };
  const isFile = await store.isFile(path);
  if (!isFile && !(await store.isFolder(path))) return { is: "nothing there", path };
  const around = await vehicleFolderAround(store, isFile ? folderOf(path) : path, read);
  if (around !== undefined)
    return buildAt(await readLogs(store, await store.logsBelow(around), read), around);
  if (isFile)
    return opened({ folder: folderOf(path), logs: await readLogs(store, [path], read), hasVehicle: false });
  const logs = await readLogs(store, await store.logsBelow(path), read);
  if (logs.length === 0) return { is: "no log", path };
  const builds = buildsAmong(logs, () => path);
  const [only, another] = builds.filter((build) => build.hasVehicle);
  if (another !== undefined)
    return {
      is: "several builds",
      path,
      folders: builds.filter((build) => build.hasVehicle).map(({ folder }) => relativeTo(path, folder)),
    };
  return opened(only ?? (builds[0] as BuildFiles));
}

function buildAt(logs: readonly ReadLog[], folder: string): OpenedBuild {
  const build = buildsAmong(logs, () => sharedFolder(logs.map(({ path }) => path))).find(
    (candidate) => candidate.folder === folder,
  );
  return opened(build ?? { folder, logs: [], hasVehicle: false });
}

function opened({ folder, logs, hasVehicle: found }: BuildFiles): OpenedBuild {
  const files = logs.map(({ path, document }) => ({ path: relativeTo(folder, path), document }));
  return { is: "build", folder, files, hasVehicle: found };
}

/** What has been read of one place, by path: looking for the vehicle reads logs that belong to the build. */
interface LogsRead {
  readonly readText: ReadText;
  readonly logs: Map<string, Promise<ReadLog>>;
}

type ReadText = (text: string) => Document;

/** The nearest folder, from `start` upwards, with a vehicle in a log of its own. */
export async function vehicleFolderAround(
  store: FileStore,
  start: string,
  read: LogsRead = { readText: Document.read, logs: new Map() },
): Promise<string | undefined> {
  for (let folder: string | undefined = start; folder !== undefined; folder = folderAround(folder)) {
    const here = await readLogs(store, await store.logsIn(folder), read);
    if (here.some(({ document }) => hasVehicle(document))) return folder;
  }
  return undefined;
}

async function readLogs(
  store: FileStore,
  paths: readonly string[],
  { readText, logs }: LogsRead,
): Promise<ReadLog[]> {
  const readOnce = (path: string): Promise<ReadLog> => {
    const known = logs.get(path) ?? readLog(store, path, readText);
    logs.set(path, known);
    return known;
  };
  return await Promise.all(paths.map(readOnce));
}

async function readLog(store: FileStore, path: string, readText: ReadText): Promise<ReadLog> {
  return { path, document: readText(await store.read(path)) };
}
