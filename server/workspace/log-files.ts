/** Which entries of a folder are logs, and in which folders more are looked for. */
import type { Dirent } from "node:fs";

const ENDING = ".cotter";

export function isLog(entry: Dirent): boolean {
  return entry.isFile() && entry.name.endsWith(ENDING);
}

/** Links are not followed: a build stays in its folder, and a circle of links ends. */
export function isOpenFolder(entry: Dirent): boolean {
  return entry.isDirectory() && !entry.name.startsWith(".") && entry.name !== "node_modules";
}
