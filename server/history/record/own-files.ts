/**
 * Which logs of a repository are of one build: those below its folder, down to a folder that has a vehicle of its own,
 * and those that were moved there.
 */
import type { Document } from "../../../grammar/document.ts";
import { hasVehicle } from "../../workspace/build-folders.ts";
import type { CommitWithLogs } from "../commit.ts";
import { isLog } from "../log-path.ts";
import type { Version } from "./versions.ts";

/** The files at a commit, by their paths from the root of the repository. */
export type Files = ReadonlyMap<string, Version>;

export class OwnFiles {
  private readonly prefix: string;
  private readonly foreign: ReadonlySet<string>;
  /** Paths outside of the folder, of files that were moved there later. */
  private readonly earlier = new Set<string>();

  /**
   * @param prefix the build's folder, with `/` behind it; empty for the root
   * @param foreign paths of files that were moved into a build below the folder
   */
  constructor(commits: readonly CommitWithLogs[], prefix: string, foreign: ReadonlySet<string>) {
    this.prefix = prefix;
    this.foreign = foreign;
    for (const { logs } of [...commits].reverse())
      for (const log of logs) if (log.is === "renamed" && this.canBe(log.path)) this.takeEarlier(log.from);
  }

  /** Whether a path can be of the build: whether it is at a commit, the other files of that commit decide. */
  canBe(path: string): boolean {
    return isLog(path) && (path.startsWith(this.prefix) || this.earlier.has(path));
  }

  /** Those of the build, among the files at a commit that can be. */
  among(files: Files): Files {
    const nested = this.foldersBelow(files);
    return nested.length === 0
      ? files
      : new Map([...files].filter(([path]) => !nested.some((folder) => path.startsWith(folder))));
  }

  /** Where files were moved from that a commit moved into a build below the folder. */
  foreignSources(files: Files, { logs }: CommitWithLogs): readonly string[] {
    const moved = logs.flatMap((log) => (log.is === "renamed" && this.earlier.has(log.from) ? [log] : []));
    if (moved.length === 0) return [];
    const nested = this.foldersBelow(files);
    return moved
      .filter(({ path }) => nested.some((folder) => path.startsWith(folder)))
      .map(({ from }) => from);
  }

  private takeEarlier(path: string): void {
    if (!path.startsWith(this.prefix) && !this.foreign.has(path)) this.earlier.add(path);
  }

  /** Folders of builds below the folder, each with `/` behind it. */
  private foldersBelow(files: Files): readonly string[] {
    const { length } = this.prefix;
    return [...files].flatMap(([path, { document }]) => {
      const end = path.lastIndexOf("/") + 1;
      return end > length && path.startsWith(this.prefix) && knownVehicle(document)
        ? [path.slice(0, end)]
        : [];
    });
  }
}

const known = new WeakMap<Document, boolean>();

/** Asked of each document at every commit at which it is there. */
function knownVehicle(document: Document): boolean {
  const answer = known.get(document) ?? hasVehicle(document);
  known.set(document, answer);
  return answer;
}
