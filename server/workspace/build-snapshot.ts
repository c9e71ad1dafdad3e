/** One build at one moment of the workspace: its logs as they stood, and what follows from them once it is asked for. */
import type { Build, BuildOptions } from "../build/build.ts";
import { readBuild } from "../build/build.ts";
import type { SourceFile } from "../build/source.ts";
import type { Complaint, SeverityOverrides } from "../rules/complaint.ts";
import type { Complaints } from "../rules/complaints.ts";
import { complaintsOf } from "../rules/complaints.ts";

/** A log, by its path in the workspace. */
export interface Log {
  readonly path: string;
  readonly file: SourceFile;
  /** The editor's version of the text; undefined where it was read from the file. */
  readonly version: number | undefined;
}

export interface SnapshotOptions extends BuildOptions {
  readonly overrides: SeverityOverrides;
}

export class BuildSnapshot {
  readonly folder: string;
  readonly hasVehicle: boolean;
  readonly logs: readonly Log[];
  readonly options: SnapshotOptions;
  private readonly byFile: ReadonlyMap<string, Log>;
  private readonly byPath: ReadonlyMap<string, Log>;
  private readBuild: Build | undefined;
  /** The build that was read last before this moment; let go of once this one is read. */
  private before: Build | undefined;
  private readComplaints: Complaints | undefined;
  /** The complaints that were read last before this moment; let go of once these are read. */
  private complaintsBefore: Complaints | undefined;
  private byLog: ReadonlyMap<Log, readonly Complaint[]> | undefined;

  constructor(
    folder: string,
    hasVehicle: boolean,
    logs: readonly Log[],
    options: SnapshotOptions,
    before?: BuildSnapshot,
  ) {
    this.folder = folder;
    this.hasVehicle = hasVehicle;
    this.logs = logs;
    this.options = options;
    this.before = before?.readBuild ?? before?.before;
    this.complaintsBefore = before?.readComplaints ?? before?.complaintsBefore;
    this.byFile = new Map(logs.map((log) => [log.file.path, log]));
    this.byPath = new Map(logs.map((log) => [log.path, log]));
  }

  get build(): Build {
    return this.read();
  }

  /** Reads the build, unless that has been done. */
  read(): Build {
    this.readBuild ??= readBuild(
      this.logs.map(({ file }) => file),
      { ...this.options, before: this.before, isGoneOnFrom: true },
    );
    this.before = undefined;
    return this.readBuild;
  }

  /**
   * The build if it has been read, else the one before the last changes: for what must be told while one types, and
   * need not know of the word under way.
   */
  get recentBuild(): Build {
    return this.readBuild ?? this.before ?? this.build;
  }

  /** Whether `recentBuild` is the build of this moment. */
  get isRead(): boolean {
    return this.readBuild !== undefined;
  }

  get complaints(): Complaints {
    if (this.readComplaints !== undefined) return this.readComplaints;
    this.readComplaints = complaintsOf(this.build, this.options.overrides, this.complaintsBefore);
    this.complaintsBefore = undefined;
    // All has been made of the lines that is made of each build.
    for (const { file, version } of this.logs) if (version === undefined) file.document.forgetLines();
    return this.readComplaints;
  }

  /** The complaints of each log, in the order of its text; logs without any included. Each list is the one from before where it holds the same. */
  get complaintsByLog(): ReadonlyMap<Log, readonly Complaint[]> {
    this.byLog ??= new Map(
      this.complaints.files.map(({ file, complaints }) => [this.logOf(file), complaints]),
    );
    return this.byLog;
  }

  log(path: string): Log | undefined {
    return this.byPath.get(path);
  }

  /** The log that a file of the build is. */
  logOf(file: SourceFile): Log {
    const log = this.byFile.get(file.path);
    if (log === undefined) throw new Error(`${file.path} is of another build`);
    return log;
  }
}
