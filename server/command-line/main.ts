/** The `cotter` program: finds the command, reads its options, and ends with its status. */
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

async function main(words: readonly string[]): Promise<ExitStatus> {
  const [name, ...rest] = words;
  if (name === undefined || name === "--help" || name === "-h" || name === "help") return say(programHelp());
  if (name === "--version") return say(`cotter ${VERSION}\n`);
  const load = commands.get(name);
  if (load === undefined) return fail(`there is no command ${name}; cotter --help lists them`, false);
  const command = await load();
  try {
    const call = await readCall(command, rest);
    if (call === "help") return say(commandHelp(command));
    return await command.run(call);
  } catch (error) {
    if (!(error instanceof Failure)) throw error;
    return fail(error.message, words.includes("--json"));
  }
}

async function readCall(command: Command, words: readonly string[]): Promise<Call | "help"> {
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
  return {
    operands: parsed.positionals,
    options,
    out: output(options),
    today: on ?? clock(),
    openBuild: (operand) => openCalledBuild(operand ?? named ?? ".", on),
    openFiles: (operand) => openCalledFiles(operand ?? named ?? ".", on),
    findBuild: async () => (named === undefined ? findBuildAround(on) : openCalledBuild(named, on)),
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

async function openCalledBuild(operand: string, on: IsoDate | undefined): Promise<CalledBuild> {
  return calledBuild(await openCalledFiles(operand, on));
}

async function openCalledFiles(operand: string, on: IsoDate | undefined): Promise<CalledFiles> {
  const opened = await openAt(operand);
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

/** The build around this folder, by the vehicle upwards of it. */
async function findBuildAround(on: IsoDate | undefined): Promise<CalledBuild | undefined> {
  const opened = await openAt(".");
  return opened.is === "build" && opened.hasVehicle ? calledBuild(calledFiles(opened, on)) : undefined;
}

async function openAt(operand: string): Promise<OpenedBuild | OpenFault> {
  const [{ openBuild }, { disk, withSlashes }] = await Promise.all([
    import("../workspace/open-build.ts"),
    import("../workspace/disk.ts"),
  ]);
  return openBuild(disk, withSlashes(path.resolve(operand)));
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

function output(options: ReadonlyMap<string, string | true>): Output {
  const colour = !options.has("no-colour") && !process.env.NO_COLOR && process.stdout.isTTY === true;
  return {
    write: (text) => void process.stdout.write(text),
    complain: (text) => void process.stderr.write(harmless(text)),
    colour,
    width: process.stdout.columns ?? 100,
  };
}

function say(text: string): ExitStatus {
  process.stdout.write(text);
  return 0;
}

function fail(message: string, json: boolean): ExitStatus {
  if (json)
    process.stdout.write(`${JSON.stringify({ schema: "cotter/failure/1", message }, undefined, 2)}\n`);
  process.stderr.write(harmless(`cotter: ${message}\n`));
  return 2;
}

/** What is said may carry words of the log or names of files: none of them steers the terminal. */
function harmless(text: string): string {
  return text.split("\n").map(plain).join("\n");
}

// A reader that closes the pipe early (`| head`) is no failure of the command.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0);
  throw error;
});

main(process.argv.slice(2)).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    process.stderr.write(
      `cotter: an error of the program itself: ${error instanceof Error ? error.stack : String(error)}\n`,
    );
    process.exitCode = 2;
  },
);
