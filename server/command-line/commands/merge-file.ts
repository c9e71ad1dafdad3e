import { readFile, realpath } from "node:fs/promises";
import path from "node:path";
import { sayGitFault } from "../../history/git-fault.ts";
import { MergeFailure, mergeLines } from "../../history/merge/merge-lines.ts";
import { mergeLogs, mergeReport } from "../../history/merge/merge-logs.ts";
import type { Command } from "../command.ts";
import { Failure } from "../command.ts";
import { writeWhole } from "../write-whole.ts";

export const mergeFile: Command = {
  name: "merge-file",
  operands: "BASE OURS THEIRS [NAME]",
  summary: "two versions of a log brought together block by block, for git; cotter start --git sets it up",
  options: [],
  examples: ["cotter merge-file base.cotter ours.cotter theirs.cotter"],
  run: async ({ operands, options, folder, out }) => {
    const [base, ours, theirs, name = ours] = operands;
    if (base === undefined || ours === undefined || theirs === undefined)
      throw new Failure(
        "name three files: the one that both were made from, ours, which is written, and theirs",
      );
    const [before, own, other] = await Promise.all([base, ours, theirs].map((file) => read(folder, file)));
    const merged = await mergeLogs(
      { base: before ?? "", ours: own ?? "", theirs: other ?? "" },
      mergeLines,
    ).catch((error: unknown) => {
      throw error instanceof MergeFailure ? new Failure(sayGitFault(error.fault)) : error;
    });
    await writeWhole(await realpath(path.resolve(folder, ours)), merged.text, true, ours);
    const { conflicts } = merged;
    if (options.has("json")) out.write(`${JSON.stringify(mergeReport(merged), undefined, 2)}\n`);
    else if (conflicts > 0)
      out.complain(
        `cotter: ${name}: ${conflicts === 1 ? "one block was" : `${conflicts} blocks were`} changed on both sides; choose between the markers\n`,
      );
    return conflicts > 0 ? 1 : 0;
  },
};

async function read(folder: string, file: string): Promise<string> {
  return await readFile(path.resolve(folder, file), "utf8").catch((error: NodeJS.ErrnoException) => {
    throw new Failure(
      `${file} cannot be read: ${error.code === "ENOENT" ? "there is no such file" : error.message}`,
    );
  });
}
