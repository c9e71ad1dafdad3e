/** The commands of the program, each loaded when it is called, so that none waits for what it does not need. */
import type { Command } from "./command.ts";

export const commands: ReadonlyMap<string, () => Promise<Command>> = new Map([
  ["check", async () => (await import("./commands/check.ts")).check],
  ["order", async () => (await import("./commands/order.ts")).order],
  ["timeline", async () => (await import("./commands/timeline.ts")).timeline],
  ["costs", async () => (await import("./commands/costs.ts")).costs],
  ["serve", async () => (await import("./commands/serve.ts")).serve],
]);

/** One line for each command, for the program's help: loading them all for it would be slow. A test holds both together. */
export const SUMMARIES: readonly (readonly [string, string])[] = [
  ["check", "everything that the log gives reason to say, line by line"],
  ["order", "the parts to order: by supplier, with why, prices, carriage and the day to order by"],
  ["timeline", "what happened, what is to come, and when it will be done"],
  ["costs", "money and hours by assembly, supplier and month, against the budget"],
  ["serve", "the language server, for any editor that speaks the protocol"],
];
