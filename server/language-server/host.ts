/** What the server needs from the place that it runs in: a process of Node, or a worker in a browser. */
import type { BuildRecord } from "../history/build-record.ts";
import type { IsoDate } from "../quantities/dates.ts";
import type { BookPhoto } from "../reports/book-photo.ts";
import type { FileStore } from "../workspace/file-store.ts";

export interface Host {
  /** Files by URI. */
  readonly files: FileStore;
  /** Today, in the time zone of the machine. */
  readonly today: () => IsoDate;
  /** Milliseconds, for the pace of work. */
  readonly now: () => number;
  /** Lets the messages that have come in be handled. */
  readonly turn: () => Promise<void>;
  /** Calls back after so many milliseconds at the least; the returned function calls it off. */
  readonly later: (milliseconds: number, callback: () => void) => () => void;
  /** The photos of a build, by its folder and the paths in its log; left out where pictures cannot be read. */
  readonly readPhotos?: (
    folder: string,
    photos: readonly string[],
  ) => Promise<ReadonlyMap<string, BookPhoto>>;
  /**
   * The record in git of the build in a folder; undefined of one that is not on this machine. Left out where no program
   * can be started. To be asked only where the user trusts the folder.
   */
  readonly recordOf?: (folder: string) => Promise<BuildRecord | undefined>;
}
