/** One call of the program: finds the command, reads its options, and gives its status. */
import { parseArgs } from "node:util";
import { VERSION } from "../language-server/version.ts";
import type { IsoDate } from "../quantities/dates.ts";
import { plain } from "../reports/plain-text.ts";
import type { Call, Command, ExitStatus, Output } from "./command.ts";
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
  const today = on ?? clock();
  const days = { clock: clock(), on };
  const load = () => import("./called-build.ts");
  return {
    operands: parsed.positionals,
    options,
    folder,
    out: output(options, around),
    today,
    openBuild: async (operand) => (await load()).openCalledBuild(folder, operand ?? named ?? ".", days),
    openFiles: async (operand) => (await load()).openCalledFiles(folder, operand ?? named ?? ".", days),
    findBuild: async () => {
      const { findBuildAround, openCalledBuild } = await load();
      return named === undefined ? findBuildAround(folder, days) : openCalledBuild(folder, named, days);
    },
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
