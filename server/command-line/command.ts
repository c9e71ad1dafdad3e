/** What every command of the program is: words for its help, and a run that ends in an exit status. */
import type { Build, BuildOptions } from "../build/build.ts";
import type { SourceFile } from "../build/source.ts";
import type { IsoDate } from "../quantities/dates.ts";

/** Exit statuses: 1 where the log is at fault, 2 where the command could not be carried out. */
export type ExitStatus = 0 | 1 | 2;

export interface Command {
  readonly name: string;
  /** What it takes behind its name, as in `[HOLD]`; empty for nothing. */
  readonly operands: string;
  readonly summary: string;
  /** Options of its own. */
  readonly options: readonly CommandOption[];
  /** Lines a user could type. */
  readonly examples: readonly string[];
  readonly run: (call: Call) => Promise<ExitStatus>;
}

export interface CommandOption {
  readonly name: string;
  /** What follows it; undefined for a switch. */
  readonly value?: string;
  readonly help: string;
}

/** One call of a command. */
export interface Call {
  readonly operands: readonly string[];
  /** Options that were given, by name without the dashes. */
  readonly options: ReadonlyMap<string, string | true>;
  /** Absolute path of the folder that it is called in: relative paths start there. */
  readonly folder: string;
  readonly out: Output;
  /** The day that `--on` names, else that of the clock. */
  readonly today: IsoDate;
  /** Opens the build that the call is about; ends the call where there is none. */
  readonly openBuild: (operand?: string) => Promise<CalledBuild>;
  /** The same without reading it as a build. */
  readonly openFiles: (operand?: string) => Promise<CalledFiles>;
  /** The build that `--build` names, else the one around this folder, if there is one. */
  readonly findBuild: () => Promise<CalledBuild | undefined>;
}

export interface CalledBuild {
  readonly build: Build;
  /** Absolute path of the build's folder. */
  readonly folder: string;
}

/** The files of a build, and how they are to be read. */
export interface CalledFiles {
  /** Absolute path of the build's folder. */
  readonly folder: string;
  readonly files: readonly SourceFile[];
  readonly options: BuildOptions;
}

export interface Output {
  readonly write: (text: string) => void;
  readonly complain: (text: string) => void;
  readonly colour: boolean;
  /** Columns of the terminal. */
  readonly width: number;
}

/** Ends a command that cannot be carried out: the message goes to standard error, the status is 2. */
export class Failure extends Error {}
