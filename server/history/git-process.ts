/**
 * The one place that starts git. No shell; nothing that a repository's own configuration could have git start: no hook,
 * watcher, pager, external diff, text conversion, signature check or transport. git is told where to look, and takes
 * nothing from variables that another git has set.
 */
import { spawn } from "node:child_process";
import path from "node:path";
import type { GitFault } from "./git-fault.ts";
import { isGitFault } from "./git-fault.ts";

/** What git printed, and how it ended. */
export interface GitAnswer {
  readonly status: number;
  readonly out: Buffer;
  readonly error: string;
}

const HARMLESS = [
  "--no-pager",
  "--no-replace-objects",
  "-c",
  "core.fsmonitor=false",
  "-c",
  "core.hooksPath=/dev/null",
  "-c",
  "core.quotePath=false",
  "-c",
  "i18n.logOutputEncoding=UTF-8",
  "-c",
  "log.showSignature=false",
  "-c",
  "log.showRoot=true",
  "-c",
  "diff.renames=true",
  "-c",
  "protocol.allow=never",
] as const;

/** The user's own choices of where git is configured and how far up it looks; all else comes from another git. */
const KEPT = new Set([
  "GIT_CONFIG_GLOBAL",
  "GIT_CONFIG_SYSTEM",
  "GIT_CONFIG_NOSYSTEM",
  "GIT_CEILING_DIRECTORIES",
  "GIT_DISCOVERY_ACROSS_FILESYSTEM",
]);

interface Surroundings {
  /** For its standard input. */
  readonly input?: string;
  /** Ends it: it has then failed. */
  readonly signal?: AbortSignal | undefined;
}

/** Runs git in a folder. */
export async function runGit(
  folder: string,
  words: readonly string[],
  { input = "", signal }: Surroundings = {},
): Promise<GitAnswer | GitFault> {
  return await new Promise((resolve) => {
    const child = spawn("git", ["-C", folder, ...HARMLESS, ...words], {
      // Not the folder itself: on some systems a program there would be taken for git.
      cwd: path.dirname(process.execPath),
      env: environment(),
      shell: false,
      windowsHide: true,
      ...(signal === undefined ? {} : { signal }),
    });
    const out: Buffer[] = [];
    const error: Buffer[] = [];
    child.stdout.on("data", (chunk: Buffer) => out.push(chunk));
    child.stderr.on("data", (chunk: Buffer) => error.push(chunk));
    // git may end before it has read everything: its status says why.
    child.stdin.on("error", () => undefined);
    child.on("error", (fault: NodeJS.ErrnoException) =>
      resolve(fault.code === "ENOENT" ? { fault: "no git" } : { fault: "failed", message: fault.message }),
    );
    child.on("close", (status) =>
      resolve({
        status: status ?? 1,
        out: Buffer.concat(out),
        error: Buffer.concat(error).toString("utf8").trim(),
      }),
    );
    child.stdin.end(input);
  });
}

/** Whether git can be started at all. */
export async function isGitHere(): Promise<boolean> {
  return !isGitFault(await runGit(".", ["--version"]));
}

function environment(): NodeJS.ProcessEnv {
  const own = Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !name.startsWith("GIT_") || KEPT.has(name)),
  );
  return {
    ...own,
    LC_ALL: "C",
    GIT_OPTIONAL_LOCKS: "0",
    GIT_TERMINAL_PROMPT: "0",
    GIT_NO_LAZY_FETCH: "1",
  };
}
