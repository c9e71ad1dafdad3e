import { mkdir, rename, rm, stat, writeFile } from "node:fs/promises";
import path from "node:path";
import { sayGitFault } from "../../history/git-fault.ts";
import { isGitHere } from "../../history/git-process.ts";
import { firstFile } from "../../history/start/first-file.ts";
import type { SetUp, SetUpFault } from "../../history/start/set-up-repository.ts";
import { setUpRepository } from "../../history/start/set-up-repository.ts";
import { startReport } from "../../history/start/start-report.ts";
import { withSlashes } from "../../workspace/slashes.ts";
import { askOnTerminal } from "../ask-on-terminal.ts";
import type { Call, Command, ExitStatus } from "../command.ts";
import { Failure } from "../command.ts";
import { thisProgram } from "../this-program.ts";

export const start: Command = {
  name: "start",
  operands: "[NAME]",
  summary: "a new build folder with a first file to fill in; with --git a repository that understands logs",
  options: [
    { name: "git", help: "keep the record in git; without NAME, for the build around this folder" },
    { name: "hook", help: "with --git: check the build before each commit" },
    { name: "no-git", help: "do not ask about git" },
  ],
  examples: ["cotter start kestrel", "cotter start kestrel --git --hook", "cotter start --git"],
  run: async (call) => {
    const [name, ...more] = call.operands;
    if (more.length > 0)
      throw new Failure('name one folder; a name with spaces stands in quotes, as in "Marsh Kestrel"');
    return name === undefined ? await setUpExisting(call) : await startNew(call, name);
  },
};

/** What the call wants of git. */
interface Wanted {
  readonly git: boolean;
  readonly hook: boolean;
}

/** The file that a new build begins with. */
const FIRST = "build.cotter";

/** Everything is made beside the folder and then takes its name, so that it is there whole or not at all. */
async function startNew(call: Call, name: string): Promise<ExitStatus> {
  const folder = path.resolve(call.folder, name);
  const title = path.basename(folder);
  if (/\p{Cc}/u.test(title) || title === "")
    throw new Failure(`${JSON.stringify(name)} is no name for a folder`);
  if ((await stat(folder).catch(() => undefined)) !== undefined)
    throw new Failure(`${name} is there already and was kept; name a folder that is not`);
  if (!(await stat(path.dirname(folder)).catch(() => undefined))?.isDirectory())
    throw new Failure(`${name} cannot be made: there is no folder ${path.dirname(folder)}`);
  const wanted = await wantedOf(call);
  const beside = path.join(path.dirname(folder), `.${title}.${process.pid}.part`);
  try {
    await mkdir(beside);
    await writeFile(path.join(beside, FIRST), firstFile(title, call.today));
    const setUp = wanted.git ? await setUpOrFail(beside, wanted) : undefined;
    await rename(beside, folder);
    return told(call, folder, [FIRST, ...(setUp?.files ?? [])], setUp);
  } catch (error) {
    await rm(beside, { recursive: true, force: true });
    if (error instanceof Failure) throw error;
    throw new Failure(`${name} cannot be made: ${(error as Error).message}`, { cause: error });
  }
}

async function setUpExisting(call: Call): Promise<ExitStatus> {
  const { options } = call;
  if (!options.has("git") && !options.has("hook"))
    throw new Failure("name the new folder, or give --git to set up git for the build around this one");
  const { folder } = await call.openFiles();
  const setUp = await setUpOrFail(folder, { git: true, hook: options.has("hook") });
  return told(call, folder, setUp.files, setUp);
}

async function setUpOrFail(folder: string, { hook }: Wanted): Promise<SetUp> {
  const program = await thisProgram();
  const setUp = await setUpRepository(folder, { hook, program }).catch((error: Error) => {
    throw new Failure(`git cannot be told of logs: ${error.message}`, { cause: error });
  });
  if ("fault" in setUp) throw new Failure(sayFault(setUp));
  return setUp;
}

function sayFault(fault: SetUpFault): string {
  switch (fault.fault) {
    case "attributes there":
      return `${fault.file} is there already and was kept: add the line ${fault.line} to it, then ask again`;
    case "hook there":
      return `${fault.file} is there already and was kept: have it run cotter check, or take it away and ask again`;
    case "hooks elsewhere":
      return `git takes its hooks from ${fault.folder}: have the pre-commit hook there run cotter check`;
    default:
      return sayGitFault(fault);
  }
}

/** Asks on a terminal what no option says. */
async function wantedOf({ options, out }: Call): Promise<Wanted> {
  const hook = options.has("hook");
  if (options.has("no-git")) {
    if (hook || options.has("git")) throw new Failure("choose one: --no-git, or --git and --hook");
    return { git: false, hook: false };
  }
  if (hook || options.has("git")) return { git: true, hook };
  const asks = process.stdin.isTTY === true && process.stdout.isTTY === true && !options.has("json");
  if (!asks) return { git: false, hook: false };
  if (!(await isGitHere())) {
    out.write("git is not on this machine, so no record is kept; cotter start --git sets it up later.\n");
    return { git: false, hook: false };
  }
  return await askOnTerminal(async (ask) => {
    const git = await ask("Keep a record in git of what was written when?");
    return { git, hook: git && (await ask("Check the build before each commit?")) };
  });
}

function told(
  { options, out, folder: from }: Call,
  folder: string,
  files: readonly string[],
  setUp: SetUp | undefined,
): ExitStatus {
  if (options.has("json")) {
    out.write(`${JSON.stringify(startReport(withSlashes(folder), files, setUp), undefined, 2)}\n`);
    return 0;
  }
  const shown = path.relative(from, folder);
  const where = shown === "" ? "this folder" : shown;
  const lines = [
    files.length === 0 ? `Everything was in ${where} already.` : `In ${where}: ${files.join(", ")}`,
    ...(setUp === undefined ? [] : [sayGit(setUp)]),
    ...(files.includes(FIRST) ? [`Open ${path.join(shown, FIRST)} and make it yours.`] : []),
    ...(shown === ""
      ? ["Then: cotter check"]
      : [`Then: cotter check ${JSON.stringify(shown)}`.replace(/"([\w./-]+)"/, "$1")]),
    ...(setUp?.made === true
      ? ['And for the record, in that folder: git add . && git commit -m "The first evening"']
      : []),
  ];
  out.write(`${lines.join("\n")}\n`);
  return 0;
}

function sayGit({ made }: SetUp): string {
  const which = made ? "A git repository was made; it" : "The git repository around it";
  return `${which} names the day or part above each change, holds values together, and merges two evenings into one diary.`;
}
