/**
 * Which files make a build: every log under the folder of the file with the `vehicle` block, down to a folder that
 * has a vehicle of its own.
 */
import type { Document } from "../../grammar/document.ts";
import { folderOf, isBelow } from "./file-store.ts";

export interface ReadLog {
  readonly path: string;
  readonly document: Document;
}

/** The files of one build, and the folder that their paths are relative to. */
export interface BuildFiles {
  readonly folder: string;
  readonly logs: readonly ReadLog[];
  readonly hasVehicle: boolean;
}

export function hasVehicle(document: Document): boolean {
  return document.blocks.some(({ header }) => header?.block === "vehicle");
}

/**
 * Parts logs into builds. Logs under no vehicle make one build without one, at `looseFolder` (or the folder that they
 * share).
 */
export function buildsAmong(logs: readonly ReadLog[], looseFolder?: string): readonly BuildFiles[] {
  const folders = [
    ...new Set(logs.filter(({ document }) => hasVehicle(document)).map(({ path }) => folderOf(path))),
  ];
  const byFolder = new Map<string, ReadLog[]>(folders.map((folder) => [folder, []]));
  const loose: ReadLog[] = [];
  for (const log of logs) {
    const nearest = folders
      .filter((folder) => isBelow(folder, log.path))
      .sort((a, b) => b.length - a.length)[0];
    if (nearest === undefined) loose.push(log);
    else byFolder.get(nearest)?.push(log);
  }
  const builds: BuildFiles[] = [...byFolder].map(([folder, own]) => ({
    folder,
    logs: own,
    hasVehicle: true,
  }));
  if (loose.length === 0) return builds;
  const folder = looseFolder ?? sharedFolder(loose.map(({ path }) => path));
  return [...builds, { folder, logs: loose, hasVehicle: false }];
}

function sharedFolder(paths: readonly string[]): string {
  let folder = folderOf(paths[0] ?? "");
  while (folder !== "" && folder !== "/" && !paths.every((path) => isBelow(folder, path)))
    folder = folderOf(folder);
  return folder;
}
