/** The commands of the program, each loaded when it is called, so that none waits for what it does not need. */
import type { Command } from "./command.ts";

export const commands: ReadonlyMap<string, () => Promise<Command>> = new Map([
  ["check", async () => (await import("./commands/check.ts")).check],
]);

/** One line for each command, for the program's help: loading them all for it would be slow. A test holds both together. */
export const SUMMARIES: readonly (readonly [string, string])[] = [
  ["check", "everything that the log gives reason to say, line by line"],
];
