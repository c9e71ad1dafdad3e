/**
 * Which files make a build: every log under the folder of the file with the `vehicle` block, down to a folder that
 * has a vehicle of its own.
 */
import type { Document } from "../../grammar/document.ts";
import { folderOf, innermost, isBelow } from "./file-store.ts";

export interface ReadLog {
  readonly path: string;
  readonly document: Document;
}

/** The files of one build, and the folder that their paths are relative to. */
export interface BuildFiles<Log extends ReadLog = ReadLog> {
  readonly folder: string;
  readonly logs: readonly Log[];
  readonly hasVehicle: boolean;
}

export function hasVehicle(document: Document): boolean {
  return document.blocks.some(({ header }) => header?.block === "vehicle");
}

/**
 * Parts logs into builds. Logs under no vehicle make builds without one, by the folder that `looseFolder` gives for
 * their path.
 */
export function buildsAmong<Log extends ReadLog>(
  logs: readonly Log[],
  looseFolder: (path: string) => string,
): readonly BuildFiles<Log>[] {
  const folders = new Set(
    logs.filter(({ document }) => hasVehicle(document)).map(({ path }) => folderHeadedBy(path)),
  );
  const builds = new Map<string, { folder: string; logs: Log[]; hasVehicle: boolean }>();
  for (const folder of folders) builds.set(folder, { folder, logs: [], hasVehicle: true });
  for (const log of logs) {
    const around = innermost(folders, log.path);
    const folder = around ?? looseFolder(log.path);
    const key = around ?? `no vehicle: ${folder}`;
    const build = builds.get(key);
    if (build === undefined) builds.set(key, { folder, logs: [log], hasVehicle: false });
    else build.logs.push(log);
  }
  return [...builds.values()];
}

/** What a log with a vehicle heads: its folder; of a text that is in no folder, such as an unsaved one, itself alone. */
function folderHeadedBy(path: string): string {
  const folder = folderOf(path);
  return folder === "" ? path : folder;
}

/** The innermost folder that all paths are below. */
export function sharedFolder(paths: readonly string[]): string {
  let folder = folderOf(paths[0] ?? "");
  while (folder !== "" && folder !== "/" && !paths.every((path) => isBelow(folder, path)))
    folder = folderOf(folder);
  return folder;
}
