/** A repository for a build: made if there is none, and told about logs. What is there is never overwritten. */
import { chmod, mkdir, open, readFile, realpath, rm, stat } from "node:fs/promises";
import path from "node:path";
import { withSlashes } from "../../workspace/slashes.ts";
import type { GitFault } from "../git-fault.ts";
import { isGitFault, notYours } from "../git-fault.ts";
import { runGit } from "../git-process.ts";
import type { Program } from "./git-setup.ts";
import { ATTRIBUTES, hookFor, settingsFor } from "./git-setup.ts";

export type SetUpFault =
  | GitFault
  | { readonly fault: "attributes there"; readonly file: string; readonly line: string }
  | { readonly fault: "hook there"; readonly file: string }
  | { readonly fault: "hooks elsewhere"; readonly folder: string };

export interface SetUp {
  /** True where a repository was made. */
  readonly made: boolean;
  /** Files that were written, from the build's folder. */
  readonly files: readonly string[];
}

interface Asked {
  readonly hook: boolean;
  readonly program: Program;
}

/** What was made is taken away again where not all of it could be. */
export async function setUpRepository(folder: string, asked: Asked): Promise<SetUp | SetUpFault> {
  const made: string[] = [];
  const undo = () => Promise.allSettled(made.map((file) => rm(file, { recursive: true, force: true })));
  try {
    const answer = await setUp(folder, asked, made);
    if ("fault" in answer) await undo();
    return answer;
  } catch (error) {
    await undo();
    throw error;
  }
}

/** @param begun each file and folder that is about to be made */
async function setUp(folder: string, { hook, program }: Asked, begun: string[]): Promise<SetUp | SetUpFault> {
  const around = await rootAround(folder);
  if (typeof around === "object") return around;
  const attributes = path.join(folder, ".gitattributes");
  const known = await readFile(attributes, "utf8").catch(() => undefined);
  if (known !== undefined && !known.includes(ATTRIBUTES.trim()))
    return { fault: "attributes there", file: attributes, line: ATTRIBUTES.trim() };
  const planned = hook ? await planHook(folder, around, program) : undefined;
  if (planned !== undefined && "fault" in planned) return planned;
  const made = around === undefined;
  const repository = path.join(folder, ".git");
  if (made && (await stat(repository).catch(() => undefined)) === undefined) begun.push(repository);
  const orders = [...(made ? [["init", "--quiet"]] : []), ...settingsFor(program).map(setting)];
  for (const words of orders) {
    const answer = await runGit(folder, words);
    if (isGitFault(answer)) return answer;
    if (answer.status !== 0) return { fault: "failed", message: answer.error };
  }
  const files: string[] = [];
  if (known === undefined) {
    await writeNew(attributes, ATTRIBUTES, begun);
    files.push(".gitattributes");
  }
  if (planned !== undefined) {
    await mkdir(path.dirname(planned.file), { recursive: true });
    if (!planned.there) await writeNew(planned.file, planned.text, begun);
    await chmod(planned.file, 0o755);
    files.push(withSlashes(path.relative(folder, planned.file)));
  }
  return { made, files };
}

async function writeNew(file: string, text: string, begun: string[]): Promise<void> {
  const handle = await open(file, "wx");
  begun.push(file);
  try {
    await handle.writeFile(text);
  } finally {
    await handle.close();
  }
}

function setting([key, value]: readonly [string, string]): string[] {
  return ["config", "--local", key, value];
}

/** The root of the repository around a folder; undefined where there is none. */
async function rootAround(folder: string): Promise<string | GitFault | undefined> {
  const answer = await runGit(folder, ["rev-parse", "--show-toplevel"]);
  if (isGitFault(answer)) return answer;
  if (answer.status === 0) return answer.out.toString("utf8").trimEnd();
  if (/not a git repository/i.test(answer.error)) return undefined;
  return notYours(answer.error, folder) ?? { fault: "failed", message: answer.error };
}

interface PlannedHook {
  readonly file: string;
  readonly text: string;
  /** True where it stands there already, as it should. */
  readonly there: boolean;
}

async function planHook(
  folder: string,
  root: string | undefined,
  program: Program,
): Promise<PlannedHook | SetUpFault> {
  for (const scope of ["--local", "--global"]) {
    const elsewhere = root === undefined && scope === "--local" ? "" : await configured(folder, scope);
    if (elsewhere !== "") return { fault: "hooks elsewhere", folder: elsewhere };
  }
  const below = root === undefined ? "" : withSlashes(path.relative(root, await realpath(folder)));
  const text = hookFor(program, below);
  const file = path.join(await gitFolder(folder, root), "hooks", "pre-commit");
  const there = await readFile(file, "utf8").catch(() => undefined);
  return there === undefined || there === text
    ? { file, text, there: there === text }
    : { fault: "hook there", file };
}

async function configured(folder: string, scope: string): Promise<string> {
  const answer = await runGit(folder, ["config", scope, "--get", "core.hooksPath"]);
  return isGitFault(answer) ? "" : answer.out.toString("utf8").trim();
}

/** Of a second working tree that of the first, where hooks are. */
async function gitFolder(folder: string, root: string | undefined): Promise<string> {
  if (root === undefined) return path.join(folder, ".git");
  const answer = await runGit(folder, ["rev-parse", "--path-format=absolute", "--git-common-dir"]);
  return isGitFault(answer) ? path.join(root, ".git") : answer.out.toString("utf8").trimEnd();
}
