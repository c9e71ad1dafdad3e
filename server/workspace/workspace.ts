/**
 * The logs that an editor works on, as builds: what is open as the editor has it, all else as it is on disk. Files are
 * reached through the file port alone, asynchronously; everything else is computed when it is asked for, and only
 * again when something in it has changed.
 */
import { Document } from "../../grammar/document.ts";
import { readAhead } from "../build/read-ahead.ts";
import type { SourceFile } from "../build/source.ts";
import { fileAfter } from "../build/source.ts";
import type { IsoDate } from "../quantities/dates.ts";
import type { SeverityOverrides } from "../rules/complaint.ts";
import { buildsAmong, hasVehicle } from "./build-folders.ts";
import type { Log } from "./build-snapshot.ts";
import { BuildSnapshot } from "./build-snapshot.ts";
import type { FileStore } from "./file-store.ts";
import { folderOf, innermost, isBelow } from "./file-store.ts";
import { vehicleFolderAround } from "./open-build.ts";
import { PhotoFiles } from "./photo-files.ts";

export interface WorkspaceOptions {
  readonly files: FileStore;
  /** Today by the clock. */
  readonly clock: () => IsoDate;
  /** A path below a build's folder as the build shows and sorts it: relative, without the escapes of a URI. */
  readonly nameWithin: (folder: string, path: string) => string;
  /** Called when something may have changed without the editor having said so: files read, photos found missing. */
  readonly onChange: () => void;
  /** Called when a file cannot be read. */
  readonly onTrouble: (message: string) => void;
}

/** A replacement in a text: offsets in UTF-16 units, or the whole text. */
export type TextChange =
  | { readonly start: number; readonly end: number; readonly text: string }
  | { readonly text: string };

/** Reports how far the reading of a folder is; returns false to have it given up. */
export type ReadingProgress = (read: number, of: number) => boolean;

/** A log before it is known which build it is in. */
interface LooseLog {
  readonly path: string;
  readonly document: Document;
  readonly version: number | undefined;
}

/** How many files are read before others get their turn. */
const READ_AT_ONCE = 16;

export class Workspace {
  private readonly options: WorkspaceOptions;
  private readonly photos: PhotoFiles;
  private readonly loose = new Map<string, LooseLog>();
  /** Folders that the editor has opened. */
  private readonly roots = new Set<string>();
  /** Folders with the vehicle of a file or root that stands below them, outside of every root. */
  private readonly around = new Set<string>();
  private overrides: SeverityOverrides = new Map();
  private builds: readonly BuildSnapshot[] = [];
  private changed = new Set<string>();
  private regroup = true;
  private reading: Promise<unknown> = Promise.resolve();

  constructor(options: WorkspaceOptions) {
    this.options = options;
    this.photos = new PhotoFiles(options.files, () => this.photosChanged());
  }

  // What the editor says.

  async addRoot(folder: string, progress: ReadingProgress = () => true): Promise<void> {
    this.roots.add(folder);
    await this.read(async () => {
      await this.readFolder(folder, progress);
      await this.lookAround(folder);
    });
  }

  removeRoot(folder: string): void {
    this.roots.delete(folder);
    this.forgetUnneeded();
  }

  /** A file is open from now on: its text is the editor's. */
  async open(path: string, text: string, version: number): Promise<void> {
    this.put({ path, document: Document.read(text), version });
    if (this.isInFolder(path)) return;
    await this.read(() => this.lookAround(folderOf(path)));
  }

  /** The editor has changed an open file; changes are carried out one after the other. Of a file that is not open none is. */
  edit(path: string, version: number, changes: readonly ((document: Document) => TextChange)[]): void {
    const log = this.loose.get(path);
    // A change that comes behind the closing must not make it the editor's again: nobody would ever close it.
    if (log?.version === undefined) return;
    let { document } = log;
    for (const changeIn of changes) {
      const change = changeIn(document);
      document =
        "start" in change ? document.edit(change.start, change.end, change.text) : Document.read(change.text);
    }
    this.put({ path, document, version });
  }

  /** A file is closed: its text is what is on disk. */
  async close(path: string): Promise<void> {
    const log = this.loose.get(path);
    if (log === undefined) return;
    this.loose.set(path, { ...log, version: undefined });
    if (!this.isInFolder(path)) this.drop(path);
    else await this.read(() => this.readFile(path));
    this.forgetUnneeded();
  }

  /** Files were made, changed or removed on disk. What is open keeps the editor's text. */
  async filesChanged(paths: readonly string[]): Promise<void> {
    await this.read(async () => {
      for (const path of paths)
        if (this.loose.get(path)?.version === undefined && this.isInFolder(path)) await this.readFile(path);
    });
  }

  /** A folder has come, with all that is in it. */
  async folderChanged(folder: string): Promise<void> {
    if (this.isInFolder(folder)) await this.read(() => this.readFolder(folder));
  }

  /** Everything below a folder, or a file, is gone. What is open stays until it is closed. */
  removed(path: string): void {
    const dropAll = () => {
      for (const log of this.loose.values())
        if (isBelow(path, log.path) && log.version === undefined) this.drop(log.path);
    };
    dropAll();
    // A reading that had begun before may still bring back what is gone.
    void this.read(async () => dropAll());
  }

  /** Files other than logs were made or removed: photos are looked for again. */
  photosMayHaveChanged(): void {
    this.photos.forget();
  }

  setSeverities(overrides: SeverityOverrides): void {
    this.overrides = overrides;
    this.regroup = true;
  }

  // What it answers.

  /** Resolves once everything that has begun to be read is read. */
  async settled(): Promise<void> {
    let last: unknown;
    do {
      last = this.reading;
      await last;
    } while (last !== this.reading);
  }

  /** The build that a file is in; undefined for a file that is neither open nor in a folder of the workspace. */
  buildOf(path: string): BuildSnapshot | undefined {
    return this.everyBuild().find((build) => build.log(path) !== undefined);
  }

  everyBuild(): readonly BuildSnapshot[] {
    const today = this.options.clock();
    if (this.builds.some((build) => build.options.clock !== today)) this.regroup = true;
    if (this.regroup) this.builds = this.groupAgain(today);
    else if (this.changed.size > 0) this.builds = this.builds.map((build) => this.renewed(build));
    this.regroup = false;
    this.changed = new Set();
    return this.builds;
  }

  documentOf(path: string): Document | undefined {
    return this.loose.get(path)?.document;
  }

  /** The editor's version of an open file. */
  versionOf(path: string): number | undefined {
    return this.loose.get(path)?.version;
  }

  /** The paths of all files that the editor has open. */
  openFiles(): readonly string[] {
    return [...this.loose.values()].filter(isOpenLog).map(({ path }) => path);
  }

  /** Whether the file is open in the editor. */
  isOpen(path: string): boolean {
    return this.versionOf(path) !== undefined;
  }

  // Builds from logs.

  private groupAgain(today: IsoDate): readonly BuildSnapshot[] {
    const before = new Map(this.builds.map((build) => [this.keyOf(build), build]));
    const groups = buildsAmong(
      [...this.loose.values()].sort((a, b) => (a.path < b.path ? -1 : 1)),
      (path) => innermost(this.roots, path) ?? path,
    );
    return groups.map(({ folder, hasVehicle: found, logs }) => {
      const known = before.get(this.keyOf({ folder, hasVehicle: found }));
      return this.snapshot(folder, found, logs, today, known);
    });
  }

  private keyOf({ folder, hasVehicle: found }: { folder: string; hasVehicle: boolean }): string {
    return `${found} ${folder}`;
  }

  private renewed(build: BuildSnapshot): BuildSnapshot {
    if (!build.logs.some(({ path }) => this.changed.has(path))) return build;
    const logs = build.logs.flatMap(({ path }) => this.loose.get(path) ?? []);
    return this.snapshot(build.folder, build.hasVehicle, logs, build.options.clock, build);
  }

  /** The build of some logs; the one before where all that it depends on is the same. */
  private snapshot(
    folder: string,
    found: boolean,
    logs: readonly LooseLog[],
    clock: IsoDate,
    before: BuildSnapshot | undefined,
  ): BuildSnapshot {
    const photos = this.photos.within(found ? folder : folderOf(logs[0]?.path ?? folder));
    const options = { clock, photos, overrides: this.overrides };
    const placed = logs.map(({ path, document, version }): Log => {
      const known = before?.log(path);
      if (known?.file.document === document && known.version === version) return known;
      return { path, version, file: this.fileOf(known, folder, path, document) };
    });
    const same =
      before?.logs.length === placed.length &&
      before.options.clock === clock &&
      before.options.photos === photos &&
      before.options.overrides === this.overrides &&
      placed.every((log, index) => before.logs[index] === log);
    return same ? before : new BuildSnapshot(folder, found, placed, options, before);
  }

  private fileOf(known: Log | undefined, folder: string, path: string, document: Document): SourceFile {
    if (known === undefined) return { path: this.options.nameWithin(folder, path), document };
    return known.file.document === document ? known.file : fileAfter(known.file, document);
  }

  private put(log: LooseLog): void {
    const before = this.loose.get(log.path);
    this.loose.set(log.path, log);
    this.changed.add(log.path);
    if (before === undefined || hasVehicle(before.document) !== hasVehicle(log.document)) this.regroup = true;
  }

  private drop(path: string): void {
    if (this.loose.delete(path)) this.regroup = true;
  }

  private photosChanged(): void {
    this.regroup = true;
    this.options.onChange();
  }

  // Reading.

  private async read(job: () => Promise<void>): Promise<void> {
    const done = this.reading.then(job).catch((error: unknown) => {
      this.options.onTrouble(error instanceof Error ? error.message : String(error));
    });
    this.reading = done;
    await done;
    this.options.onChange();
  }

  private async readFolder(folder: string, progress: ReadingProgress = () => true): Promise<void> {
    const paths = await this.options.files.logsBelow(folder);
    for (let from = 0; from < paths.length; from += READ_AT_ONCE) {
      if (!progress(from, paths.length)) return;
      await Promise.all(paths.slice(from, from + READ_AT_ONCE).map((path) => this.readFile(path)));
    }
  }

  private async readFile(path: string): Promise<void> {
    if (this.isOpen(path)) return;
    const text = await this.options.files.read(path).catch(() => undefined);
    // The editor may have opened it in the meantime.
    if (this.isOpen(path)) return;
    if (text === undefined) this.drop(path);
    else if (this.loose.get(path)?.document.text !== text) {
      const document = Document.read(text);
      readAhead(document);
      this.put({ path, document, version: undefined });
    } else this.changed.add(path);
  }

  /** Finds the vehicle around a folder that no root holds, and reads the build that it heads. */
  private async lookAround(folder: string): Promise<void> {
    const found = await vehicleFolderAround(this.options.files, folder);
    if (found === undefined || this.isInFolder(found)) return;
    this.around.add(found);
    await this.readFolder(found);
  }

  private isInFolder(path: string): boolean {
    return innermost(this.roots, path) !== undefined || innermost(this.around, path) !== undefined;
  }

  /** Forgets the folders around what is no longer open, and the logs that only they held. */
  private forgetUnneeded(): void {
    const needed = [...this.roots, ...[...this.loose.values()].filter(isOpenLog).map(({ path }) => path)];
    for (const folder of this.around)
      if (!needed.some((path) => isBelow(folder, path))) this.around.delete(folder);
    for (const { path, version } of [...this.loose.values()])
      if (version === undefined && !this.isInFolder(path)) this.drop(path);
  }
}

function isOpenLog({ version }: LooseLog): boolean {
  return version !== undefined;
}
