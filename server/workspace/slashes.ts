/** Paths as the workspace has them, with `/` between their names, and as this machine has them. */
import { sep } from "node:path";

/** A path of this machine with `/` between its names. */
export function withSlashes(path: string): string {
  return sep === "/" ? path : path.replaceAll(sep, "/");
}

/** The same the other way round. */
export function native(path: string): string {
  return sep === "/" ? path : path.replaceAll("/", sep);
}

export function join(folder: string, name: string): string {
  return folder.endsWith("/") ? folder + name : `${folder}/${name}`;
}
