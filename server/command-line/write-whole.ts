/** Writes a file whole or not at all. */
import { access, constants, copyFile, link, rename, rm, stat, writeFile } from "node:fs/promises";
import path from "node:path";
import { Failure } from "./command.ts";

/**
 * Through a file beside it that then takes its name; a file that is there is kept unless it may be overwritten.
 * @param target absolute path
 * @param file how it was named
 */
export async function writeWhole(
  target: string,
  text: string,
  overwrite: boolean,
  file = target,
): Promise<void> {
  const beside = path.join(path.dirname(target), `.${path.basename(target)}.${process.pid}.part`);
  try {
    const mode = await refuse(target, file, overwrite);
    // On the disk before it takes the name: a power cut leaves the one or the other.
    await writeFile(beside, text, { flag: "wx", flush: true, ...(mode === undefined ? {} : { mode }) });
    if (overwrite) await rename(beside, target);
    else await linkOrCopy(beside, target);
  } catch (error) {
    throw failure(error, file);
  } finally {
    await rm(beside, { force: true });
  }
}

/** Refuses a target that is to be kept. Answers with the rights of the file that is there, which the new one has too. */
async function refuse(target: string, file: string, overwrite: boolean): Promise<number | undefined> {
  const there = await stat(target).catch(() => undefined);
  if (there?.isDirectory()) throw new Failure(`${file} is a folder`);
  if (there !== undefined && !overwrite) throw alreadyThere(file);
  // A new file in its place would not mind that this one may not be written.
  if (there !== undefined) await access(target, constants.W_OK);
  return there?.mode;
}

/** Neither replaces what another program has put there meanwhile; not every disk knows links. */
async function linkOrCopy(from: string, to: string): Promise<void> {
  try {
    await link(from, to);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") throw error;
    await copyFile(from, to, constants.COPYFILE_EXCL);
  }
}

function failure(error: unknown, file: string): Failure {
  if (error instanceof Failure) return error;
  const { code, message } = error as NodeJS.ErrnoException;
  if (code === "EEXIST") return alreadyThere(file);
  if (code === "ENOENT") return new Failure(`${file} cannot be written: there is no such folder`);
  return new Failure(`${file} cannot be written: ${message}`);
}

function alreadyThere(file: string): Failure {
  return new Failure(`${file} is there already and was kept; --overwrite replaces it`);
}
