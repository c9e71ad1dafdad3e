/** The build that a command is called for: found on disk, and read. Loaded when a command asks for it. */
import { realpathSync } from "node:fs";
import path from "node:path";
import { Document } from "../../grammar/document.ts";
import { readBuild } from "../build/build.ts";
import { readAhead } from "../build/read-ahead.ts";
import type { IsoDate } from "../quantities/dates.ts";
import type { OpenedBuild, OpenFault } from "../workspace/open-build.ts";
import { openBuild } from "../workspace/open-build.ts";
import { withSlashes } from "../workspace/slashes.ts";
import type { CalledBuild, CalledFiles } from "./command.ts";
import { Failure } from "./command.ts";
import { diskAtOnce } from "./disk-at-once.ts";

/** Today by the clock of this machine, and the day that was asked for. */
interface Days {
  readonly clock: IsoDate;
  readonly on: IsoDate | undefined;
}

/**
 * The build at a place, without reading it as a build.
 *
 * @param from absolute path of the folder that a relative operand starts from
 * @throws {Failure} where there is none
 */
export async function openCalledFiles(from: string, operand: string, days: Days): Promise<CalledFiles> {
  return filesOf(operand, await openAt(path.resolve(from, operand)), days);
}

function filesOf(operand: string, opened: OpenedBuild | OpenFault, days: Days): CalledFiles {
  switch (opened.is) {
    case "nothing there":
      throw new Failure(`there is no file or folder ${operand}`);
    case "no log":
      throw new Failure(`there is no .cotter file in ${operand === "." ? "this folder" : operand} or below`);
    case "several builds":
      throw new Failure(
        `there are several builds below ${operand}: name one of ${opened.folders.join(", ")}`,
      );
    case "build":
      return calledFiles(opened, days);
  }
}

export async function openCalledBuild(from: string, operand: string, days: Days): Promise<CalledBuild> {
  return calledBuild(filesOf(operand, await openAt(path.resolve(from, operand), documentReadAhead), days));
}

/** The build around a folder, by the vehicle upwards of it. */
export async function findBuildAround(folder: string, days: Days): Promise<CalledBuild | undefined> {
  const opened = await openAt(folder, documentReadAhead);
  return opened.is === "build" && opened.hasVehicle ? calledBuild(calledFiles(opened, days)) : undefined;
}

function openAt(target: string, readText?: (text: string) => Document): Promise<OpenedBuild | OpenFault> {
  return openBuild(diskAtOnce, withSlashes(target), readText);
}

/** For a build: of its texts it keeps what it makes of them, not their lines. */
function documentReadAhead(text: string): Document {
  const document = Document.read(text);
  readAhead(document);
  return document;
}

function calledFiles({ folder, files }: OpenedBuild, days: Days): CalledFiles {
  return { folder, files, options: { ...days, photos: (photo) => isInside(folder, photo) } };
}

function calledBuild({ folder, files, options }: CalledFiles): CalledBuild {
  return { folder, build: readBuild(files, options) };
}

/** Whether a photo is a file within the build's folder, links followed. */
function isInside(folder: string, photo: string): boolean {
  try {
    const base = realpathSync(folder);
    const found = realpathSync(path.resolve(base, photo));
    return found.startsWith(base + path.sep);
  } catch {
    return false;
  }
}
