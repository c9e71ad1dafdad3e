/** A command called as the program calls it, in this process: for what needs no program of its own. */
import type { Command } from "../../server/command-line/command.ts";
import { Failure } from "../../server/command-line/command.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { openWorking } from "../history/working-build.ts";
import type { Ended } from "./program.ts";

/** @param folder where the build is looked for */
export async function called(command: Command, words: readonly string[], folder: string): Promise<Ended> {
  const [out, err]: [string[], string[]] = [[], []];
  const run = command.run({
    operands: words.filter((word) => !word.startsWith("--")),
    options: new Map(words.flatMap((word) => (word.startsWith("--") ? [[word.slice(2), true]] : []))),
    out: {
      write: (text) => void out.push(text),
      complain: (text) => void err.push(text),
      colour: false,
      width: 100,
    },
    today: "2026-05-02" as IsoDate,
    openFiles: () => openWorking(folder),
    openBuild: () => Promise.reject(new Error("not asked for")),
    findBuild: () => Promise.reject(new Error("not asked for")),
  });
  const status = await run.catch((error: unknown) => {
    if (!(error instanceof Failure)) throw error;
    err.push(error.message);
    return 2;
  });
  return { status, out: out.join(""), err: err.join("") };
}
