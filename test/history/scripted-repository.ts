/** Repositories made by git itself from a script, with fixed names and dates: one process for all their commits. */
import { spawnSync } from "node:child_process";
import { appendFileSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";

export interface ScriptedCommit {
  /** Says it to commits that go on from it; the same number as in the script. */
  readonly day: string;
  readonly author?: string;
  readonly message?: string;
  readonly branch?: string;
  /** Files written; null takes one away. */
  readonly files: Readonly<Record<string, string | null>>;
  /** The commit that it goes on from, counted from 1: by default the one before. */
  readonly from?: number;
  /** A commit that it takes over as well. */
  readonly merges?: number;
}

/** A folder with a working tree of the last commit of `main`. */
export function scriptedRepository(commits: readonly ScriptedCommit[]): string {
  const folder = mkdtempSync(path.join(tmpdir(), "cotter-record-"));
  git(folder, ["init", "--quiet", "--initial-branch=main"]);
  // What two calls of `git config` would write.
  appendFileSync(path.join(folder, ".git", "config"), "[user]\n\tname = JR\n\temail = jr@bench.example\n");
  if (commits.length === 0) return folder;
  git(folder, ["fast-import", "--quiet"], commits.map(scripted).join(""));
  git(folder, ["reset", "--quiet", "--hard", "main"]);
  return folder;
}

function scripted(commit: ScriptedCommit, index: number): string {
  const { day, author = "JR", message = `Commit ${index + 1}`, branch = "main", files, merges } = commit;
  const from = commit.from ?? (index === 0 ? undefined : index);
  const seconds = Date.parse(`${day}T20:00:00Z`) / 1000;
  return [
    `commit refs/heads/${branch}\nmark :${index + 1}\n`,
    `committer ${author} <${author.toLowerCase()}@bench.example> ${seconds} +0000\n${data(message)}`,
    from === undefined ? "" : `from :${from}\n`,
    merges === undefined ? "" : `merge :${merges}\n`,
    ...Object.entries(files).map(([name, text]) =>
      text === null ? `D ${quoted(name)}\n` : `M 100644 inline ${quoted(name)}\n${data(text)}`,
    ),
    "\n",
  ].join("");
}

function data(text: string): string {
  return `data ${Buffer.byteLength(text)}\n${text}\n`;
}

function quoted(name: string): string {
  return /["\s]/.test(name) ? `"${name.replaceAll("\\", "\\\\").replaceAll('"', '\\"')}"` : name;
}

/** Runs git; what it printed. Throws with what it complained of. */
export function git(
  folder: string,
  words: readonly string[],
  input = "",
  more: Readonly<Record<string, string>> = {},
): string {
  const { status, stdout, stderr } = spawnSync("git", ["-C", folder, ...words], {
    input,
    encoding: "utf8",
    env: { ...environment(), GIT_CONFIG_GLOBAL: "/dev/null", GIT_CONFIG_NOSYSTEM: "1", ...more },
  });
  if (status !== 0) throw new Error(`git ${words.join(" ")}: ${stderr}`);
  return stdout;
}

/** The tests may themselves be run by a hook. */
function environment(): NodeJS.ProcessEnv {
  return Object.fromEntries(Object.entries(process.env).filter(([name]) => !name.startsWith("GIT_")));
}
