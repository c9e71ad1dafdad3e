/** One call of the program: finds the command, reads its options, and gives its status. */
import { realpathSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { VERSION } from "../language-server/version.ts";
import type { IsoDate } from "../quantities/dates.ts";
import { plain } from "../reports/plain-text.ts";
import type { OpenedBuild, OpenFault } from "../workspace/open-build.ts";
import type { Call, CalledBuild, CalledFiles, Command, ExitStatus, Output } from "./command.ts";
import { Failure } from "./command.ts";
import { commands } from "./commands.ts";
import { commandHelp, programHelp } from "./help.ts";

const GLOBAL = {
  build: { type: "string" },
  on: { type: "string" },
  json: { type: "boolean" },
  help: { type: "boolean", short: "h" },
  version: { type: "boolean" },
  "no-colour": { type: "boolean" },
} as const;

/** What the program is called in. */
export interface Surroundings extends Output {
  /** Absolute path of the folder that relative paths start from. */
  readonly folder: string;
}

/** @param words what stands behind the program's name; an error of the program itself rejects */
export async function run(words: readonly string[], around: Surroundings): Promise<ExitStatus> {
  const [name, ...rest] = words;
  if (name === undefined || name === "--help" || name === "-h" || name === "help")
    return say(programHelp(), around);
  if (name === "--version") return say(`cotter ${VERSION}\n`, around);
  const load = commands.get(name);
  if (load === undefined) return fail(`there is no command ${name}; cotter --help lists them`, false, around);
  const command = await load();
  try {
    const call = await readCall(command, rest, around);
    if (call === "help") return say(commandHelp(command), around);
    return await command.run(call);
  } catch (error) {
    if (!(error instanceof Failure)) throw error;
    return fail(error.message, words.includes("--json"), around);
  }
}

async function readCall(
  command: Command,
  words: readonly string[],
  around: Surroundings,
): Promise<Call | "help"> {
  const own = Object.fromEntries(
    command.options.map(({ name, value }) => [
      name,
      { type: value === undefined ? ("boolean" as const) : ("string" as const) },
    ]),
  );
  const parsed = parse(command, words, own);
  const options = new Map(
    Object.entries(parsed.values).map(([name, value]) => [name, value as string | true]),
  );
  if (options.has("help")) return "help";
  const on = await readDay(options.get("on"));
  const named = options.get("build") as string | undefined;
  const { folder } = around;
  const openFiles = (operand: string) => openCalledFiles(folder, operand, on);
  return {
    operands: parsed.positionals,
    options,
    folder,
    out: output(options, around),
    today: on ?? clock(),
    openBuild: async (operand) => calledBuild(await openFiles(operand ?? named ?? ".")),
    openFiles: (operand) => openFiles(operand ?? named ?? "."),
    findBuild: async () =>
      named === undefined ? findBuildAround(folder, on) : calledBuild(await openFiles(named)),
  };
}

function parse(
  command: Command,
  words: readonly string[],
  own: Record<string, { type: "boolean" | "string" }>,
) {
  try {
    return parseArgs({ args: [...words], options: { ...GLOBAL, ...own }, allowPositionals: true });
  } catch (error) {
    throw new Failure(
      `${(error as Error).message.split(". To specify")[0]}; cotter ${command.name} --help shows what it takes`,
      { cause: error },
    );
  }
}

async function readDay(text: string | true | undefined): Promise<IsoDate | undefined> {
  if (typeof text !== "string") return undefined;
  const { readDate, isDateFault } = await import("../quantities/dates.ts");
  const date = readDate(text);
  if (isDateFault(date)) throw new Failure(`--on ${text}: ${date.message}`);
  return date;
}

async function openCalledFiles(from: string, operand: string, on: IsoDate | undefined): Promise<CalledFiles> {
  const opened = await openAt(path.resolve(from, operand));
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
      return calledFiles(opened, on);
  }
}

/** The build around a folder, by the vehicle upwards of it. */
async function findBuildAround(folder: string, on: IsoDate | undefined): Promise<CalledBuild | undefined> {
  const opened = await openAt(folder);
  return opened.is === "build" && opened.hasVehicle ? calledBuild(calledFiles(opened, on)) : undefined;
}

async function openAt(target: string): Promise<OpenedBuild | OpenFault> {
  const [{ openBuild }, { disk, withSlashes }] = await Promise.all([
    import("../workspace/open-build.ts"),
    import("../workspace/disk.ts"),
  ]);
  return openBuild(disk, withSlashes(target));
}

function calledFiles({ folder, files }: OpenedBuild, on: IsoDate | undefined): CalledFiles {
  return { folder, files, options: { clock: clock(), on, photos: (photo) => isInside(folder, photo) } };
}

async function calledBuild({ folder, files, options }: CalledFiles): Promise<CalledBuild> {
  const { readBuild } = await import("../build/build.ts");
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

/** Today by the clock of this machine, in its own time zone. */
function clock(): IsoDate {
  const now = new Date();
  const two = (figure: number) => String(figure).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}` as IsoDate;
}

function output(options: ReadonlyMap<string, string | true>, around: Surroundings): Output {
  return {
    ...around,
    complain: (text) => around.complain(harmless(text)),
    colour: around.colour && !options.has("no-colour"),
  };
}

function say(text: string, { write }: Surroundings): ExitStatus {
  write(text);
  return 0;
}

function fail(message: string, json: boolean, { write, complain }: Surroundings): ExitStatus {
  if (json) write(`${JSON.stringify({ schema: "cotter/failure/1", message }, undefined, 2)}\n`);
  complain(harmless(`cotter: ${message}\n`));
  return 2;
}

/** What is said may carry words of the log or names of files: none of them steers the terminal. */
function harmless(text: string): string {
  return text.split("\n").map(plain).join("\n");
}
