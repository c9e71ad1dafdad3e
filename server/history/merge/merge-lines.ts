/** The lines of one block brought together by git, which knows how; both versions stand between markers where it cannot. */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import type { GitFault } from "../git-fault.ts";
import { isGitFault } from "../git-fault.ts";
import { runGit } from "../git-process.ts";
import type { MergeInBlock, Versions } from "./merge-logs.ts";

/** @throws a `MergeFailure` where git cannot be asked */
export const mergeLines: MergeInBlock = async ({ base, ours, theirs }) => {
  const folder = await mkdtemp(path.join(tmpdir(), "cotter-merge-")).catch(noRoom);
  try {
    const files: Readonly<Record<keyof Versions, string>> = { ours, base, theirs };
    for (const [name, text] of Object.entries(files))
      await writeFile(path.join(folder, name), text === "" ? "" : `${text}\n`).catch(noRoom);
    const names = Object.keys(files);
    const answer = await runGit(folder, [
      "merge-file",
      "-p",
      ...names.flatMap((name) => ["-L", name]),
      ...names,
    ]);
    if (isGitFault(answer)) throw new MergeFailure(answer);
    if (answer.status > 127) throw new MergeFailure({ fault: "failed", message: answer.error });
    return { text: answer.out.toString("utf8").trimEnd(), conflict: answer.status > 0 };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
};

/** Git compares files, not texts: they stand for a moment where the system keeps what is passing. */
function noRoom({ message }: Error): never {
  throw new MergeFailure({ fault: "failed", message: `${message}, in ${tmpdir()}` });
}

export class MergeFailure extends Error {
  readonly fault: GitFault;

  constructor(fault: GitFault) {
    super(fault.fault);
    this.fault = fault;
  }
}
