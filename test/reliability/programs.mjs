// The built programs. The long run works on a copy, so that a build in the meantime takes no part away from under it.
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { root } from "./figures.mjs";

let folder = path.join(root, "dist");

/** @param name of the bundle, without its ending */
export function program(name) {
  return path.join(folder, `${name}.cjs`);
}

/** From now on `program` names those in another folder. */
export function usePrograms(copy) {
  folder = copy;
}

/** From now on `program` names a copy, which is removed as this process ends. */
export function copyPrograms() {
  const copy = mkdtempSync(path.join(tmpdir(), "cotter-programs-"));
  cpSync(folder, copy, { recursive: true });
  process.once("exit", () => rmSync(copy, { recursive: true, force: true }));
  usePrograms(copy);
}
